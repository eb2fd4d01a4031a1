package rules

// Notice explains a finding that no rule of the catalogue makes: about concessions, and
// about faults of fettle's own.
type Notice struct{ Name, Title, Why string }

// Notices lists them by name.
var Notices = []Notice{
	{ConcessionLapsed, "A concession has ended", "A concession holds until the day that is written in it. Past that day what it accepted is reported again."},
	{ConcessionUnused, "A concession accepts nothing", "A concession that matches no finding is either no longer wanted, or names the wrong rule or place."},
	{ConcessionUndated, "Whether a concession has ended is not known", "The check reads no clock. Give it the day, --on year-month-day, and it will say which concessions have ended."},
	{Fault, "A fault of fettle's own", "A rule failed while it was asked. Nothing is said of what it checks; the other rules went on."},
}
