// A reference for solids: boxes and cones, cut, joined and measured by the general-purpose
// open-source modelling kernel Open CASCADE Technology (Debian: libocct-modeling-algorithms-dev,
// libocct-modeling-data-dev, libocct-foundation-dev, libocct-visualization-dev for one
// header). It reads commands and answers in lines.
//
//   box x0 y0 z0 x1 y1 z1                  pushes a box
//   cone px py pz ux uy uz height r0 r1    pushes a cylinder or a frustum
//   ball cx cy cz r                        pushes a ball
//   column n x y z ... dx dy dz            pushes the prism over a flat outline of n corners
//   cut, fuse, common                      take two, push one
//   keep                                   pushes the topmost solid once more
//   vol                                    answers the volume of the topmost solid, and drops it
//   gap                                    takes two, answers their least distance
//   ray ox oy oz dx dy dz                  answers the spans of a straight line within the topmost
//   reset                                  drops everything
#include <BRepAlgoAPI_Common.hxx>
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepAlgoAPI_Fuse.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepClass3d_SolidClassifier.hxx>
#include <BRepExtrema_DistShapeShape.hxx>
#include <BRepGProp.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakeCone.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <BRepPrimAPI_MakeSphere.hxx>
#include <GProp_GProps.hxx>
#include <IntCurvesFace_ShapeIntersector.hxx>
#include <algorithm>
#include <cstdio>
#include <gp_Ax2.hxx>
#include <gp_Lin.hxx>
#include <iostream>
#include <string>
#include <vector>

static std::vector<TopoDS_Shape> pile;

static TopoDS_Shape pop() {
  TopoDS_Shape s = pile.back();
  pile.pop_back();
  return s;
}

static void ray(const double *a) {
  gp_Dir d(a[3], a[4], a[5]);
  IntCurvesFace_ShapeIntersector hits;
  hits.Load(pile.back(), 1e-9);
  hits.Perform(gp_Lin(gp_Pnt(a[0], a[1], a[2]), d), -1e5, 1e5);
  std::vector<double> t, u;
  for (int i = 1; i <= hits.NbPnt(); i++) t.push_back(hits.WParameter(i));
  std::sort(t.begin(), t.end());
  for (double x : t)
    if (u.empty() || x - u.back() > 1e-6) u.push_back(x);
  bool first = true;
  for (size_t i = 0; i + 1 < u.size(); i++) {
    double m = (u[i] + u[i + 1]) / 2;
    gp_Pnt p(a[0] + m * d.X(), a[1] + m * d.Y(), a[2] + m * d.Z());
    BRepClass3d_SolidClassifier in(pile.back(), p, 1e-9);
    if (in.State() != TopAbs_IN) continue;
    printf("%s%.9f %.9f", first ? "" : " ", u[i], u[i + 1]);
    first = false;
  }
  printf("\n");
}

int main() {
  std::string c;
  double a[9];
  auto read = [&](int n) {
    for (int i = 0; i < n; i++) std::cin >> a[i];
  };
  while (std::cin >> c) {
    if (c == "box") {
      read(6);
      pile.push_back(BRepPrimAPI_MakeBox(gp_Pnt(a[0], a[1], a[2]), gp_Pnt(a[3], a[4], a[5])).Shape());
    } else if (c == "cone") {
      read(9);
      gp_Ax2 ax(gp_Pnt(a[0], a[1], a[2]), gp_Dir(a[3], a[4], a[5]));
      if (a[7] == a[8])
        pile.push_back(BRepPrimAPI_MakeCylinder(ax, a[7], a[6]).Shape());
      else
        pile.push_back(BRepPrimAPI_MakeCone(ax, a[7], a[8], a[6]).Shape());
    } else if (c == "ball") {
      read(4);
      pile.push_back(BRepPrimAPI_MakeSphere(gp_Pnt(a[0], a[1], a[2]), a[3]).Shape());
    } else if (c == "column") {
      int n;
      std::cin >> n;
      BRepBuilderAPI_MakePolygon outline;
      for (int i = 0; i < n; i++) {
        read(3);
        outline.Add(gp_Pnt(a[0], a[1], a[2]));
      }
      outline.Close();
      read(3);
      pile.push_back(BRepPrimAPI_MakePrism(BRepBuilderAPI_MakeFace(outline.Wire()).Face(), gp_Vec(a[0], a[1], a[2])).Shape());
    } else if (c == "cut" || c == "fuse" || c == "common") {
      TopoDS_Shape b = pop(), s = pop();
      pile.push_back(c == "cut" ? BRepAlgoAPI_Cut(s, b).Shape() : c == "fuse" ? BRepAlgoAPI_Fuse(s, b).Shape() : BRepAlgoAPI_Common(s, b).Shape());
    } else if (c == "keep") {
      pile.push_back(pile.back());
    } else if (c == "vol") {
      GProp_GProps g;
      BRepGProp::VolumeProperties(pop(), g, 1e-9);
      printf("%.9f\n", g.Mass());
    } else if (c == "gap") {
      TopoDS_Shape b = pop(), s = pop();
      BRepExtrema_DistShapeShape d(s, b);
      printf("%.9f\n", d.Value());
    } else if (c == "ray") {
      read(6);
      ray(a);
    } else if (c == "reset") {
      pile.clear();
    }
    fflush(stdout);
  }
}
