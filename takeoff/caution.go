package takeoff

// Cautions gives the codes of what can hurt someone at the work that the item
// stands for. Common practice, no source; local law and a competent person on
// site decide.
func (i Item) Cautions() []string {
	switch i.Code {
	case CodeDig:
		return []string{CautionServices, CautionCaveIn, CautionOpenHole}
	case CodeBoulders:
		return []string{CautionLift}
	case CodeGravel:
		return []string{CautionTip}
	case CodeCement, CodePrimer:
		return []string{CautionSolvent}
	}
	return nil
}
