package diagnose

func (d *doctor) because(c *correction, cleared []int) string { return "" }
