package quantity

// ranging are the words between the ends of a range; each needs a space on both sides.
var ranging = []string{"to", "bis", "a", "à", "al", "até", "hasta", "tot", "do", "ile", "up to", "till", "until", "jusqu'à", "fino a", "至", "到"}

// joining are the words between equals.
var joining = []string{"and", "or", "und", "oder", "et", "ou", "y", "o", "e", "ed", "en", "of", "i", "lub", "ve", "veya", "和", "或", "及", "und/oder", "and/or"}

// multiplying are the words of a multiplication.
var multiplying = []string{"by", "mal", "por", "per"}

// bounding are the words and signs of a limit.
var bounding = map[Bound][]string{
	AtLeast: {"≥", ">", ">=", "=>", "at least", "min", "min.", "minimum", "mind.", "mindestens", "au moins", "al menos", "almeno", "no less than", "not less than", "minimaal", "≥=", "以上", "至少"},
	AtMost:  {"≤", "<", "<=", "=<", "up to", "max", "max.", "maximum", "maximal", "bis zu", "jusqu'à", "hasta", "fino a", "até", "maks", "maks.", "maximaal", "not more than", "no more than", "not exceeding", "以下", "最大", "最高"},
}

// naming are the words after which a number is a name: a standard, a class, a figure.
var naming = []string{"IEC", "ISO", "EN", "UL", "DIN", "VDE", "ASTM", "IP", "NEMA", "OHSAS", "SA", "BS", "JIS", "GB", "GB/T", "CSA", "NF", "AS/NZS", "TS", "class", "klasse", "classe", "clase", "klasa", "type", "typ", "tipo", "no.", "nr.", "n°", "rev", "rev.", "ver", "ver.", "version", "edition", "fig.", "fig", "table", "page", "CEI", "IEC/EN", "EN/IEC", "UL/IEC"}

// prefixes are the letters that may touch a number from the left without making it a name.
var prefixes = []string{"DC", "AC", "AWG", "VDC", "Ø", "ø", "φ", "Φ", "∅", "max", "min", "ca", "approx"}

// ordinals make a number a rank, not an amount.
var ordinals = []string{"st", "nd", "rd", "th", "er", "ère", "ème"}
