package physics

// Rear irradiances in W/m2 of the two bifacial conditions of IEC 61215-1:2021, clause 3: nameplate and stress (as cited in the trade press).
const (
	BNPIRear = 135.0
	BSIRear  = 300.0
)

// EquivalentIrradiance is the one-sided irradiance in W/m2 that gives a bifacial module's current with 1000 W/m2 in front and rear W/m2 behind;
// phi is the bifaciality of Isc as a share. Source: IEC TS 60904-1-2 (from memory).
func EquivalentIrradiance(phi, rear float64) float64 { return STCIrradiance + phi*rear }
