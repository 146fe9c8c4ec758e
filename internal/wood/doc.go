// Package wood knows what wood is and what air does to it: species, climate
// and sizes go in; moisture content, movement, density, stiffness and strength
// come out, each with the source that says so.
//
// It promises that no figure is silently zero: a [Figure] that the tables lack
// says so by its [Status], and a question that needs it answers with a
// [MissingError]. A figure kept from memory stays marked as such, also after it
// went through a calculation. Tables are parsed once and never change; a
// *[Species] is shared and read-only, and everything here may be called from
// several goroutines.
//
// It draws no conclusion: whether a movement is too much is for package check,
// how a joint leaves room for it is for package joinery, and how a number is
// printed is for package measure.
//
// Units: moisture content in percent of oven-dry mass, humidity in percent,
// temperature in °C, stress in pascals, density in kg/m³, force in newtons. A
// [Coefficient] is the share of a size that moves for one percent of moisture;
// a [Shrinkage] is the whole way from green to oven-dry in percent. The tables
// under data keep the units their sources print.
//
// Frame: radial is across the growth rings, tangential along them. A [Cut]
// tells how the rings stand to the face of a board; width and thickness of the
// board follow from it, length runs with the grain.
//
// Equations and tables are those of the Wood Handbook, Wood as an Engineering
// Material (USDA Forest Products Laboratory), editions FPL-GTR-190 (2010) and
// FPL-GTR-282 (2021):
//
//	moisture in balance with air    Eq. 4-5     [EMC], [HumidityFor]
//	movement within 6 to 14 %       Eq. 13-2    [Species.Move]
//	movement outside that           Eq. 13-3    [Species.Move]
//	specific gravity and density    Eq. 4-9 to 4-14   [Species.GravityAt], [Species.DensityAt]
//	strength at a moisture content  Eq. 5-3     [Species.RuptureAt], [Species.StiffnessAt]
//	sag of a shelf                  Eq. 9-2, Table 9-1   [Beam]
//	gluing                          Table 10-1  [Bonding]
//
// The cup of a board is derived here, see [Species.Cup].
package wood
