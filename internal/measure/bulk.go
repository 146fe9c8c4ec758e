package measure

// Conversions of areas, volumes, masses, stresses and temperatures. All
// factors are exact and follow from four definitions in NIST Special
// Publication 811 (2008), Guide for the Use of the SI, appendix B: 1 in =
// 25.4 mm, 1 lb = 0.453 592 37 kg, g = 9.806 65 m/s², °F = 1.8 °C + 32.
const (
	inch       = 25.4 // mm
	foot       = 12 * inch
	metre      = 1000.0 // mm
	pound      = 0.45359237
	gravity    = 9.80665
	psi        = pound * gravity / (inch * inch) * 1e6 // Pa: per mm² to per m²
	megapascal = 1e6
)

// AreaOf is the area of a rectangle.
func AreaOf(a, b Length) Area { return Area(a.Millimetres() * b.Millimetres()) }

// Times is the volume that an area makes over a thickness.
func (a Area) Times(thick Length) Volume { return Volume(float64(a) * thick.Millimetres()) }

// SquareMillimetres is the area in square millimetres.
func (a Area) SquareMillimetres() float64 { return float64(a) }

// SquareInches is the area in square inches.
func (a Area) SquareInches() float64 { return float64(a) / (inch * inch) }

// SquareFeet is the area in square feet.
func (a Area) SquareFeet() float64 { return float64(a) / (foot * foot) }

// SquareMetres is the area in square metres.
func (a Area) SquareMetres() float64 { return float64(a) / (metre * metre) }

// VolumeOf is the volume of a straight block.
func VolumeOf(a, b, c Length) Volume {
	return Volume(a.Millimetres() * b.Millimetres() * c.Millimetres())
}

// CubicInches is the volume in cubic inches.
func (v Volume) CubicInches() float64 { return float64(v) / (inch * inch * inch) }

// CubicFeet is the volume in cubic feet.
func (v Volume) CubicFeet() float64 { return float64(v) / (foot * foot * foot) }

// CubicMetres is the volume in cubic metres.
func (v Volume) CubicMetres() float64 { return float64(v) / (metre * metre * metre) }

// Of is the mass of a volume at this density.
func (d Density) Of(v Volume) Mass { return Mass(float64(d) * v.CubicMetres()) }

// PoundsPerCubicFoot is the density in pounds per cubic foot.
func (d Density) PoundsPerCubicFoot() float64 {
	return float64(d) / pound * (foot * foot * foot) / (metre * metre * metre)
}

// Pounds is a mass of so many pounds.
func Pounds(lb float64) Mass { return Mass(lb * pound) }

// Pounds is the mass in pounds.
func (m Mass) Pounds() float64 { return float64(m) / pound }

// Kilograms is the mass in kilograms.
func (m Mass) Kilograms() float64 { return float64(m) }

// Grams is the mass in grams.
func (m Mass) Grams() float64 { return float64(m) * 1000 }

// PSI is a stress of so many pounds-force per square inch.
func PSI(n float64) Stress { return Stress(n * psi) }

// PSI is the stress in pounds-force per square inch.
func (s Stress) PSI() float64 { return float64(s) / psi }

// MPa is a stress of so many megapascals, which are newtons per square
// millimetre.
func MPa(n float64) Stress { return Stress(n * megapascal) }

// MPa is the stress in megapascals.
func (s Stress) MPa() float64 { return float64(s) / megapascal }

// Celsius is a temperature of so many degrees Celsius.
func Celsius(c float64) Temperature { return Temperature(c) }

// Celsius is the temperature in degrees Celsius.
func (t Temperature) Celsius() float64 { return float64(t) }

// Fahrenheit is a temperature of so many degrees Fahrenheit.
func Fahrenheit(f float64) Temperature { return Temperature((f - 32) / 1.8) }

// Fahrenheit is the temperature in degrees Fahrenheit.
// The inner conversion keeps every processor from fusing the two steps.
func (t Temperature) Fahrenheit() float64 { return float64(float64(t)*1.8) + 32 }
