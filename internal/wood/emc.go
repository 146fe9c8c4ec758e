package wood

import (
	"math"

	"casewright/internal/measure"
)

// EMCSource is who says what moisture content wood comes to in given air.
const EMCSource = "FPL-GTR-282 (2021) Eq. 4-5 p. 4-3"

// The temperatures EMC answers for, °C. Table 4-2, which is worked from the
// equation, runs from −1 to 132; colder air is an extrapolation.
const (
	coldest measure.Temperature = -40
	hottest measure.Temperature = 100
)

// EMC is the moisture content that wood of any species comes to when it is
// left in air of this humidity and temperature: the Hailwood-Horrobin equation
// with the Celsius coefficients of Simpson (1973). It knows no hysteresis: wood
// that dries down to the air stays a little wetter than wood that takes up
// moisture from it.
//
// Humidity from 0 to below 100 % and temperature from −40 to 100 °C; anything
// else is a *[RangeError].
func EMC(h measure.Humidity, t measure.Temperature) (measure.MoistureContent, error) {
	if !(h >= 0 && h < 100) {
		return 0, &RangeError{What: "the relative humidity", Value: float64(h), High: 100, Below: true, Unit: "%"}
	}
	if err := checkTemperature(t); err != nil {
		return 0, err
	}
	return sorptionAt(t).at(float64(h) / 100), nil
}

func checkTemperature(t measure.Temperature) error {
	if within(float64(t), float64(coldest), float64(hottest)) {
		return nil
	}
	return &RangeError{What: "the temperature", Value: float64(t), Low: float64(coldest), High: float64(hottest), Unit: "°C"}
}

// sorption holds the letters of Eq. 4-5 for one temperature: w a molar weight
// of dry wood, k, k1 and k2 the constants of the sorption model.
type sorption struct{ w, k, k1, k2 float64 }

func sorptionAt(t measure.Temperature) sorption {
	c := float64(t)
	return sorption{
		w:  349 + 1.29*c + 0.0135*c*c,
		k:  0.805 + 0.000736*c - 0.00000273*c*c,
		k1: 6.27 - 0.00938*c - 0.000303*c*c,
		k2: 1.91 + 0.0407*c - 0.000293*c*c,
	}
}

// at is the moisture content at a humidity given as a fraction.
func (s sorption) at(h float64) measure.MoistureContent {
	kh := s.k * h
	held := s.k1*kh + 2*s.k1*s.k2*kh*kh
	return measure.MoistureContent(1800 / s.w * (kh/(1-kh) + held/(1+s.k1*kh+s.k1*s.k2*kh*kh)))
}

// HumidityFor is the humidity of air at this temperature in which wood keeps
// the moisture content: EMC turned round. A moisture content that no air short
// of saturated holds wood at is a *[RangeError].
func HumidityFor(mc measure.MoistureContent, t measure.Temperature) (measure.Humidity, error) {
	if err := checkTemperature(t); err != nil {
		return 0, err
	}
	s := sorptionAt(t)
	low, high := 0.0, math.Nextafter(1, 0)
	if most := s.at(high); !(mc >= 0 && mc <= most) {
		return 0, &RangeError{What: "the moisture content to keep", Value: float64(mc), Low: 0, High: float64(most), Unit: "%"}
	}
	// EMC grows with humidity throughout, so halving finds the one answer; 60
	// halvings are past the last bit of a float64.
	for range 60 {
		mid := (low + high) / 2
		if s.at(mid) < mc {
			low = mid
		} else {
			high = mid
		}
	}
	return measure.Humidity(100 * high), nil
}

// Air is one state of the air and the moisture content wood comes to in it.
type Air struct {
	Humidity    measure.Humidity
	Temperature measure.Temperature
	Moisture    measure.MoistureContent
}

// NewAir works out the moisture content; see [EMC] for its limits.
func NewAir(h measure.Humidity, t measure.Temperature) (Air, error) {
	mc, err := EMC(h, t)
	return Air{Humidity: h, Temperature: t, Moisture: mc}, err
}

// Climate is the air a piece is made in and the range it will live in.
type Climate struct {
	Dry, Damp Air // the two ends of the year where the piece will stand
	Shop      Air // the shop on the day
}

// NewClimate works out the moisture contents of a year between a driest and a
// dampest humidity at one room temperature, and of the shop. Dry must not be
// above damp.
func NewClimate(dry, damp measure.Humidity, room measure.Temperature, shop measure.Humidity, shopTemperature measure.Temperature) (Climate, error) {
	var c Climate
	var err error
	if c.Dry, err = NewAir(dry, room); err != nil {
		return Climate{}, err
	}
	if c.Damp, err = NewAir(damp, room); err != nil {
		return Climate{}, err
	}
	if c.Shop, err = NewAir(shop, shopTemperature); err != nil {
		return Climate{}, err
	}
	if dry > damp {
		return Climate{}, &RangeError{What: "the driest humidity of the year", Value: float64(dry), Low: 0, High: float64(damp), Unit: "%"}
	}
	return c, nil
}
