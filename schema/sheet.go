// Package schema is the sheet record: what a datasheet becomes, what a catalogue keeps, what a person may write by hand.
// It holds the types, their JSON, their JSON Schema and the pointers into them.
// It does no I/O and must not import any other package of the project.
package schema

// Format is the value of a record's "format" key.
const Format = "pvtally.sheet/1"

// Sheet is one datasheet's record. A key that carries no value was not printed. Field order is the canonical order of the JSON.
type Sheet struct {
	Format       string              `json:"format"`
	Maker        string              `json:"maker,omitempty"`
	Series       string              `json:"series,omitempty"`
	Revision     string              `json:"revision,omitempty"`
	Issued       string              `json:"issued,omitempty"`
	Language     string              `json:"language,omitempty"`
	Source       Source              `json:"source,omitzero"`
	Cell         Cell                `json:"cell,omitzero"`
	Body         Body                `json:"body,omitzero"`
	Bifacial     Bifacial            `json:"bifacial,omitzero"`
	Thermal      Thermal             `json:"thermal,omitzero"`
	Limits       Limits              `json:"limits,omitzero"`
	Tolerance    Tolerance           `json:"tolerance,omitzero"`
	Conditions   Conditions          `json:"conditions,omitzero"`
	Warranty     Warranty            `json:"warranty,omitzero"`
	Packing      Packing             `json:"packing,omitzero"`
	Certificates []string            `json:"certificates,omitempty"`
	LowLight     LowLight            `json:"low_light,omitzero"`
	Models       []Model             `json:"models,omitempty"`
	Also         []Also              `json:"also,omitempty"`
	Unresolved   []Unresolved        `json:"unresolved,omitempty"`
	Evidence     map[string]Evidence `json:"evidence,omitempty"`
	Notes        Notes               `json:"-"`

	// EvidenceNotes are the notes that stand between the entries of the evidence map.
	EvidenceNotes Notes `json:"-"`
}

// Source names the file a record was read from. File is relative to the record.
type Source struct {
	File   string `json:"file,omitempty"`
	SHA256 string `json:"sha256,omitempty"`
	Pages  int    `json:"pages,omitempty"`
	Part   int    `json:"part,omitempty"`
	Parts  int    `json:"parts,omitempty"`
	Notes  Notes  `json:"-"`
}

// Cell is the solar cells' block. Technology is one of Technologies.
type Cell struct {
	Technology  string `json:"technology,omitempty"`
	Count       Number `json:"count,omitzero"`
	Arrangement string `json:"arrangement,omitempty"`
	Cut         string `json:"cut,omitempty"`
	Width       Number `json:"width_mm,omitzero"`
	Height      Number `json:"height_mm,omitzero"`
	Busbars     Number `json:"busbars,omitzero"`
	Notes       Notes  `json:"-"`
}

// Body is the module as a thing: sides sorted longest, middle, shortest, with the frame.
type Body struct {
	Length        Number   `json:"length_mm,omitzero"`
	Width         Number   `json:"width_mm,omitzero"`
	Depth         Number   `json:"depth_mm,omitzero"`
	Mass          Number   `json:"mass_kg,omitzero"`
	FrontGlass    Number   `json:"front_glass_mm,omitzero"`
	RearGlass     Number   `json:"rear_glass_mm,omitzero"`
	CableSection  Number   `json:"cable_mm2,omitzero"`
	CableLengths  []Number `json:"cable_length_mm,omitempty"`
	BypassDiodes  Number   `json:"bypass_diodes,omitzero"`
	JunctionBoxIP string   `json:"junction_box_ip,omitempty"`
	Connector     string   `json:"connector,omitempty"`
	Frame         string   `json:"frame,omitempty"`
	Notes         Notes    `json:"-"`
}

// Bifacial is the ratio of rear to front power at STC, with its tolerance in points.
type Bifacial struct {
	Factor          Number `json:"factor_pct,omitzero"`
	FactorTolerance Number `json:"factor_tolerance_pct,omitzero"`
	Notes           Notes  `json:"-"`
}

// Thermal holds operating temperatures and temperature coefficients, signs as printed.
type Thermal struct {
	NMOT          Number `json:"nmot_c,omitzero"`
	NMOTTolerance Number `json:"nmot_tolerance_c,omitzero"`
	NOCT          Number `json:"noct_c,omitzero"`
	NOCTTolerance Number `json:"noct_tolerance_c,omitzero"`
	AlphaIsc      Number `json:"alpha_isc_pct_per_k,omitzero"`
	AlphaIscAbs   Number `json:"alpha_isc_a_per_k,omitzero"`
	BetaVoc       Number `json:"beta_voc_pct_per_k,omitzero"`
	BetaVocAbs    Number `json:"beta_voc_v_per_k,omitzero"`
	GammaPmax     Number `json:"gamma_pmax_pct_per_k,omitzero"`
	GammaPmaxAbs  Number `json:"gamma_pmax_w_per_k,omitzero"`
	Notes         Notes  `json:"-"`
}

// Limits are what the module must not exceed, as printed; the sheet's own limits, local code and a licensed professional decide.
type Limits struct {
	SystemVoltage   []Number `json:"system_voltage_v,omitempty"`
	SeriesFuse      Number   `json:"series_fuse_a,omitzero"`
	ReverseCurrent  Number   `json:"reverse_current_a,omitzero"`
	TemperatureMin  Number   `json:"temperature_min_c,omitzero"`
	TemperatureMax  Number   `json:"temperature_max_c,omitzero"`
	FrontLoad       Number   `json:"front_load_pa,omitzero"`
	RearLoad        Number   `json:"rear_load_pa,omitzero"`
	FrontDesignLoad Number   `json:"front_design_load_pa,omitzero"`
	RearDesignLoad  Number   `json:"rear_design_load_pa,omitzero"`
	SafetyClass     string   `json:"safety_class,omitempty"`
	FireClass       string   `json:"fire_class,omitempty"`
	Notes           Notes    `json:"-"`
}

// Tolerance: power minus is a positive number; measurement is the stated uncertainty of Pmax.
type Tolerance struct {
	PowerPlusW    Number `json:"power_plus_w,omitzero"`
	PowerMinusW   Number `json:"power_minus_w,omitzero"`
	PowerPlusPct  Number `json:"power_plus_pct,omitzero"`
	PowerMinusPct Number `json:"power_minus_pct,omitzero"`
	VocPct        Number `json:"voc_pct,omitzero"`
	IscPct        Number `json:"isc_pct,omitzero"`
	Measurement   Number `json:"measurement_pct,omitzero"`
	Notes         Notes  `json:"-"`
}

// Conditions holds only what the sheet prints about its conditions.
type Conditions struct {
	STC   Condition `json:"stc,omitzero"`
	NMOT  Condition `json:"nmot,omitzero"`
	NOCT  Condition `json:"noct,omitzero"`
	BNPI  Condition `json:"bnpi,omitzero"`
	Low   Condition `json:"low,omitzero"`
	Notes Notes     `json:"-"`
}

// Condition is one reporting condition.
type Condition struct {
	Irradiance     Number `json:"irradiance_w_m2,omitzero"`
	RearIrradiance Number `json:"rear_irradiance_w_m2,omitzero"`
	Ambient        Number `json:"ambient_c,omitzero"`
	CellTemp       Number `json:"cell_c,omitzero"`
	Wind           Number `json:"wind_m_s,omitzero"`
	AirMass        Number `json:"air_mass,omitzero"`
	Notes          Notes  `json:"-"`
}

// Warranty: losses are losses (a printed first-year output of 97.5 % is a loss of 2.5).
type Warranty struct {
	ProductYears     Number `json:"product_years,omitzero"`
	PerformanceYears Number `json:"performance_years,omitzero"`
	FirstYearLoss    Number `json:"first_year_loss_pct,omitzero"`
	AnnualLoss       Number `json:"annual_loss_pct,omitzero"`
	FinalOutput      Number `json:"final_output_pct,omitzero"`
	Notes            Notes  `json:"-"`
}

// Packing is the 40' HQ container's where several are printed.
type Packing struct {
	ModulesPerPallet    Number `json:"modules_per_pallet,omitzero"`
	PalletsPerContainer Number `json:"pallets_per_container,omitzero"`
	ModulesPerContainer Number `json:"modules_per_container,omitzero"`
	Notes               Notes  `json:"-"`
}

// LowLight is the one-line promise "97 % of the STC efficiency at 200 W/m2".
type LowLight struct {
	Irradiance         Number `json:"irradiance_w_m2,omitzero"`
	RelativeEfficiency Number `json:"relative_efficiency_pct,omitzero"`
	Notes              Notes  `json:"-"`
}

// Model is one power class, in ascending STC power.
type Model struct {
	Name      string      `json:"name,omitempty"`
	Aliases   []string    `json:"aliases,omitempty"`
	STC       Electrical  `json:"stc,omitzero"`
	NMOT      Electrical  `json:"nmot,omitzero"`
	NOCT      Electrical  `json:"noct,omitzero"`
	BNPI      Electrical  `json:"bnpi,omitzero"`
	PTC       Number      `json:"ptc_w,omitzero"`
	Low       Low         `json:"low,omitzero"`
	Thermal   Thermal     `json:"thermal,omitzero"`
	RearGain  []RearGain  `json:"rear_gain,omitempty"`
	RearRatio []RearRatio `json:"rear_ratio,omitempty"`
	Notes     Notes       `json:"-"`
}

// Electrical is one class's values under one condition. Efficiency is per cent of the module's outer area.
type Electrical struct {
	Pmax       Number `json:"pmax_w,omitzero"`
	Vmp        Number `json:"vmp_v,omitzero"`
	Imp        Number `json:"imp_a,omitzero"`
	Voc        Number `json:"voc_v,omitzero"`
	Isc        Number `json:"isc_a,omitzero"`
	Efficiency Number `json:"efficiency_pct,omitzero"`
	Notes      Notes  `json:"-"`
}

// Low is a class's values at an irradiance other than STC, NMOT or NOCT.
type Low struct {
	Irradiance Number `json:"irradiance_w_m2,omitzero"`
	Electrical
}

// RearGain is one line of the "with 5/10/… % rear side power gain" table.
type RearGain struct {
	Gain Number `json:"gain_pct,omitzero"`
	Electrical
}

// RearRatio is one line of the "at 10 % rear-to-front irradiance ratio" table.
type RearRatio struct {
	Ratio Number `json:"ratio_pct,omitzero"`
	Electrical
}

// Also is a quantity the sheet says a second time: in another unit, on the front page, in the drawing.
type Also struct {
	Field    string `json:"field"`
	Label    string `json:"label,omitempty"`
	Printed  string `json:"printed"`
	Value    Number `json:"value,omitzero"`
	HalfStep Number `json:"half_step,omitzero"`
	Page     int    `json:"page,omitempty"`
	Box      Box    `json:"box,omitzero"`
	By       string `json:"by,omitempty"`
	Notes    Notes  `json:"-"`
}

// Unresolved is what the reader saw and would not decide.
type Unresolved struct {
	Field      string   `json:"field"`
	Label      string   `json:"label,omitempty"`
	Candidates []string `json:"candidates,omitempty"`
	Page       int      `json:"page,omitempty"`
	Box        Box      `json:"box,omitzero"`
	Why        string   `json:"why"`
	Notes      Notes    `json:"-"`
}

// Evidence tells where a value was read. Readings is 2 when two independent readings agree.
type Evidence struct {
	Label    string `json:"label,omitempty"`
	Printed  string `json:"printed"`
	Unit     string `json:"unit,omitempty"`
	Page     int    `json:"page,omitempty"`
	Box      Box    `json:"box,omitzero"`
	By       string `json:"by,omitempty"`
	Readings int    `json:"readings,omitempty"`
	HalfStep Number `json:"half_step,omitzero"`
	Note     string `json:"note,omitempty"`
	Notes    Notes  `json:"-"`
}

// ReadBy are the values of By: how a value was read.
var ReadBy = []string{"text", "picture", "html", "hand"}

// Technologies are the values of Cell.Technology.
var Technologies = []string{"mono", "mono-n", "mono-perc", "multi", "multi-perc", "topcon", "hjt", "ibc", "cdte", "cigs", "a-si", "tandem"}

// Cuts are the values of Cell.Cut.
var Cuts = []string{"half", "third", "shingle"}
