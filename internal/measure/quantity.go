package measure

// Length is a signed length in whole nanometres. The zero value is no length.
type Length int64

// The units a length is written in, exactly.
const (
	Nanometre   Length = 1
	Micrometre         = 1000 * Nanometre
	Millimetre         = 1000 * Micrometre
	Centimetre         = 10 * Millimetre
	Metre              = 1000 * Millimetre
	Inch               = 25_400 * Micrometre
	Foot               = 12 * Inch
	SixtyFourth        = Inch / 64
)

// Millimetres is the length in millimetres, for curves and drawings.
func (l Length) Millimetres() float64 { return float64(l) / float64(Millimetre) }

// Inches is the length in inches, for published formulas that want them.
func (l Length) Inches() float64 { return float64(l) / float64(Inch) }

// Area is a surface in square millimetres.
type Area float64

// Volume is a volume in cubic millimetres.
type Volume float64

// Mass is a mass in kilograms.
type Mass float64

// Density is a mass per volume in kilograms per cubic metre.
type Density float64

// Stress is a pressure, strength or stiffness in pascals.
type Stress float64

// Angle is an angle in radians, counter-clockwise positive.
type Angle float64

// MoistureContent is the mass of water in wood as a percentage of its
// oven-dry mass: 8 means 8 %.
type MoistureContent float64

// Humidity is the relative humidity of air in percent: 40 means 40 % RH.
type Humidity float64

// Temperature is a temperature in degrees Celsius.
type Temperature float64

// Money is an amount in whole cents of the shop's one currency.
type Money int64

// BoardFeet is an amount of rough wood; one board foot is 144 cubic inches.
type BoardFeet float64
