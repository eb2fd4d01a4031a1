package report

import (
	"encoding/json"
	"fmt"
	"hash/fnv"
	"io"
	"net/url"
	"path"
	"strings"

	"fettle/rules"
	"fettle/schema"
	"fettle/schema/finding"
	"fettle/schema/text"
)

// The report in SARIF 2.1.0, the open standard for findings about files (OASIS, 2020, with its
// errata). Each check of a recipe against a shop is a run of its own. Columns count code points;
// a finding is known again by its identity (rule, cause and labels), so that an edit elsewhere
// in the file makes no new one of it.

const (
	sarifVersion = "2.1.0"
	sarifSchema  = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
	identity     = "findingIdentity/v1"
)

type sarifLog struct {
	Schema  string     `json:"$schema"`
	Version string     `json:"version"`
	Runs    []sarifRun `json:"runs"`
}

type sarifRun struct {
	Tool        sarifTool         `json:"tool"`
	Automation  sarifAutomation   `json:"automationDetails"`
	Invocations []sarifInvocation `json:"invocations"`
	ColumnKind  string            `json:"columnKind"`
	Results     []sarifResult     `json:"results"`
}

type sarifTool struct {
	Driver sarifDriver `json:"driver"`
}

type sarifDriver struct {
	Name  string      `json:"name"`
	Rules []sarifRule `json:"rules"`
}

type sarifRule struct {
	ID       string      `json:"id"`
	Short    *sarifText  `json:"shortDescription,omitempty"`
	Full     *sarifText  `json:"fullDescription,omitempty"`
	Help     *sarifText  `json:"help,omitempty"`
	Standing *sarifLevel `json:"defaultConfiguration,omitempty"`
}

type sarifText struct {
	Text string `json:"text"`
}

type sarifLevel struct {
	Level string `json:"level"`
}

type sarifAutomation struct {
	ID string `json:"id"`
}

type sarifInvocation struct {
	Successful bool `json:"executionSuccessful"`
}

type sarifResult struct {
	RuleID       string            `json:"ruleId"`
	RuleIndex    int               `json:"ruleIndex"`
	Level        string            `json:"level"`
	Message      sarifText         `json:"message"`
	Locations    []sarifLocation   `json:"locations,omitempty"`
	Related      []sarifLocation   `json:"relatedLocations,omitempty"`
	Fingerprints map[string]string `json:"partialFingerprints"`
	Fixes        []sarifFix        `json:"fixes,omitempty"`
}

type sarifLocation struct {
	ID       int            `json:"id,omitempty"`
	Physical *sarifPhysical `json:"physicalLocation,omitempty"`
	Logical  []sarifLogical `json:"logicalLocations,omitempty"`
	Message  *sarifText     `json:"message,omitempty"`
}

type sarifPhysical struct {
	Artifact sarifArtifact `json:"artifactLocation"`
	Region   *sarifRegion  `json:"region,omitempty"`
}

type sarifArtifact struct {
	URI string `json:"uri"`
}

type sarifRegion struct {
	StartLine   int `json:"startLine"`
	StartColumn int `json:"startColumn"`
	EndColumn   int `json:"endColumn"`
}

type sarifLogical struct {
	Name string `json:"fullyQualifiedName"`
}

type sarifFix struct {
	Description sarifText     `json:"description"`
	Changes     []sarifChange `json:"artifactChanges"`
}

type sarifChange struct {
	Artifact     sarifArtifact      `json:"artifactLocation"`
	Replacements []sarifReplacement `json:"replacements"`
}

type sarifReplacement struct {
	Deleted  sarifBytes `json:"deletedRegion"`
	Inserted sarifText  `json:"insertedContent"`
}

type sarifBytes struct {
	Offset int `json:"byteOffset"`
	Length int `json:"byteLength"`
}

// SARIF writes what was checked, a run for each recipe and shop.
func SARIF(w io.Writer, all []*Checked) error {
	log := sarifLog{Schema: sarifSchema, Version: sarifVersion, Runs: []sarifRun{}}
	for _, c := range all {
		log.Runs = append(log.Runs, c.sarif())
	}
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(log)
}

func (c *Checked) sarif() sarifRun {
	run := sarifRun{
		Automation:  sarifAutomation{ID: "fettle/" + addressOf(c.Recipe) + "/" + addressOf(c.Shop) + "/"},
		Invocations: []sarifInvocation{{Successful: c.Read}},
		ColumnKind:  "unicodeCodePoints",
		Results:     []sarifResult{},
	}
	run.Tool.Driver = sarifDriver{Name: "fettle", Rules: []sarifRule{}}
	at := map[string]int{}
	for i := range c.Findings {
		f := &c.Findings[i]
		if _, ok := at[f.Rule]; !ok {
			at[f.Rule] = len(run.Tool.Driver.Rules)
			run.Tool.Driver.Rules = append(run.Tool.Driver.Rules, sarifRuleOf(f))
		}
		r := c.sarifResult(f)
		r.RuleIndex = at[f.Rule]
		run.Results = append(run.Results, r)
	}
	return run
}

// sarifRuleOf is the page of a rule, of the catalogue or about how recipes are written.
func sarifRuleOf(f *finding.Finding) sarifRule {
	out := sarifRule{ID: f.Rule}
	for _, s := range schema.Slips {
		if s.Name == f.Rule {
			out.Short, out.Full, out.Help = &sarifText{s.Title}, &sarifText{s.Why}, &sarifText{s.Why}
			out.Standing = &sarifLevel{levelOf(s.Level)}
			return out
		}
	}
	r := rules.Find(f.Rule)
	if r == nil {
		return out
	}
	help := r.Why
	if r.Caution != "" {
		help += "\n\nCaution: " + r.Caution
	}
	help += "\n\nSource: " + strings.Join(r.Source, "; ")
	out.Short = &sarifText{r.Title}
	out.Full = &sarifText{strings.ReplaceAll(r.Why, "\n", " ")}
	out.Help = &sarifText{help}
	out.Standing = &sarifLevel{levelOf(r.Level)}
	return out
}

// levelOf puts our levels on the standard's three: what stops the work or can hurt someone is
// an error, what is likely to spoil the part a warning, advice a note.
func levelOf(l finding.Level) string {
	switch l {
	case finding.Danger, finding.Stop:
		return "error"
	case finding.Scrap:
		return "warning"
	}
	return "note"
}

func (c *Checked) sarifResult(f *finding.Finding) sarifResult {
	r := sarifResult{RuleID: f.Rule, Level: levelOf(f.Level), Message: sarifText{sentence(f)},
		Fingerprints: map[string]string{identity: fingerprint(f)}}
	where := sarifLocation{Physical: c.physical(f.Place)}
	for _, s := range f.Spots {
		if name := s.String(); name != "" {
			where.Logical = append(where.Logical, sarifLogical{name})
		}
	}
	if where.Physical != nil || len(where.Logical) > 0 {
		r.Locations = []sarifLocation{where}
	}
	for i, n := range f.Also {
		if p := c.physical(n.Place); p != nil {
			r.Related = append(r.Related, sarifLocation{ID: i + 1, Physical: p, Message: &sarifText{n.Says}})
		}
	}
	for _, m := range f.Remedies {
		r.Fixes = append(r.Fixes, sarifFixOf(m))
	}
	return r
}

// sentence is what a finding says, with its level in our words and its rule of thumb.
func sentence(f *finding.Finding) string {
	s := f.Level.String() + ": " + f.Says
	if limits := limitsFor(f); f.Judgement == finding.Thumb && len(limits) > 0 {
		s += ". A rule of thumb: the shop may set " + strings.Join(limits, " or ") + " in rules_of_thumb."
	}
	return s
}

// physical is a place in a file; nil where there is none.
func (c *Checked) physical(p text.Place) *sarifPhysical {
	if p.None() || c.Build == nil {
		return nil
	}
	m := c.Build.Sources.Mark(p)
	if m.File == "" || m.Line < 1 || m.Column < 1 {
		return nil
	}
	return &sarifPhysical{sarifArtifact{addressOf(m.File)}, &sarifRegion{m.Line, m.Column, m.Column + max(m.Length, 0)}}
}

// addressOf writes the name of a file or folder as the standard wants it: an address, relative
// where the name is.
func addressOf(name string) string {
	name = path.Clean(strings.ToValidUTF8(name, "\uFFFD"))
	u := url.URL{Path: name}
	if strings.HasPrefix(name, "/") {
		u.Scheme = "file"
	}
	return u.String()
}

// fingerprint reduces the identity of a finding to a short word that stays.
func fingerprint(f *finding.Finding) string {
	h := fnv.New128a()
	h.Write([]byte(f.ID()))
	return fmt.Sprintf("%x", h.Sum(nil))
}

// sarifFixOf is a remedy that was tried: all of its edits or none.
func sarifFixOf(m finding.Remedy) sarifFix {
	fix := sarifFix{Description: sarifText{m.Title}, Changes: []sarifChange{}}
	for _, e := range m.Edits {
		to := addressOf(e.File)
		if n := len(fix.Changes); n == 0 || fix.Changes[n-1].Artifact.URI != to {
			fix.Changes = append(fix.Changes, sarifChange{Artifact: sarifArtifact{to}})
		}
		c := &fix.Changes[len(fix.Changes)-1]
		c.Replacements = append(c.Replacements, sarifReplacement{sarifBytes{e.From, e.To - e.From}, sarifText{e.New}})
	}
	return fix
}
