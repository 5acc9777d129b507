package rules

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"
)

// families in the order in which a reviewer works: the electrical table first, the paper last.
var families = []string{"stc", "classes", "thermal", "nmot", "noct", "low", "rear", "body", "limits", "tolerance", "warranty", "packing", "paper", "catalogue"}

// book is every rule, one line each: adding a rule is adding its file and its line here.
var book = []*Rule{
	stcCellCount,
	stcCurrentDensity,
	stcCurrentOrder,
	stcCurrentRatio,
	stcEfficiencyArea,
	stcEfficiencyLimit,
	stcFillFactor,
	stcFillFactorLimit,
	stcFiveParameter,
	stcPTCPower,
	stcPowerProduct,
	stcVocPerCell,
	stcVoltageOrder,
	stcVoltageRatio,
	classesEfficiency,
	classesMonotone,
	classesNamePower,
	classesPowerStep,
	classesProduct,
	classesRepeatedColumn,
	classesSlippedRow,
	classesSmooth,
	thermalAlphaRange,
	thermalBetaRange,
	thermalBetaTheory,
	thermalCoefficientSum,
	thermalGammaRange,
	thermalSign,
	thermalTemperatureRange,
	thermalUnitsAgree,
	nmotCopied,
	nmotOrder,
	nmotPowerProduct,
	nmotPredictedIsc,
	nmotPredictedPower,
	nmotPredictedVoc,
	noctCopied,
	noctOrder,
	noctPowerProduct,
	noctPredictedIsc,
	noctPredictedPower,
	noctPredictedVoc,
	lowPredicted,
	lowRelativeEfficiency,
	rearBNPI,
	rearFactorMissing,
	rearFactorRange,
	rearGainArithmetic,
	rearRatioArithmetic,
	bodyCellCount,
	bodyCellsFit,
	bodyFormat,
	bodyGlassMass,
	bodyMassArea,
	bodySides,
	bodyUnitsAgree,
	limitsFuseCurrent,
	limitsLoad,
	limitsReverseCurrent,
	limitsSystemVoltage,
	limitsTemperature,
	toleranceClassStep,
	toleranceMinus,
	warrantyEndValue,
	warrantyOrder,
	packingPayload,
	packingProduct,
	paperConditions,
	paperPrintedTwice,
	paperRequired,
	paperStandardWithdrawn,
	paperUnresolved,
	catalogueDrift,
	catalogueRepeatedModel,
	catalogueSameNumbers,
	catalogueSource,
}

var byID = func() map[string]*Rule {
	m, err := index(book)
	if err != nil {
		panic(err) // an undocumented rule is a mistake of the programmer: no program must start with it
	}
	return m
}()

// index sorts the rules by family and ID and refuses an undocumented or repeated one.
func index(rs []*Rule) (map[string]*Rule, error) {
	m := make(map[string]*Rule, len(rs))
	var errs []error
	for _, r := range rs {
		r.document()
		if err := r.validate(); err != nil {
			errs = append(errs, err)
		}
		if m[r.ID] != nil {
			errs = append(errs, fmt.Errorf("two rules have the ID %q", r.ID))
		}
		m[r.ID] = r
	}
	slices.SortFunc(rs, func(a, b *Rule) int {
		return cmp.Or(cmp.Compare(slices.Index(families, a.Family()), slices.Index(families, b.Family())), strings.Compare(a.ID, b.ID))
	})
	return m, errors.Join(errs...)
}

// Family is the part of the ID before the slash.
func (r *Rule) Family() string {
	family, _, _ := strings.Cut(r.ID, "/")
	return family
}

// All is every rule, by family and ID.
func All() []*Rule { return slices.Clone(book) }

// Lookup finds a rule by its ID.
func Lookup(id string) (*Rule, bool) {
	r, ok := byID[id]
	return r, ok
}
