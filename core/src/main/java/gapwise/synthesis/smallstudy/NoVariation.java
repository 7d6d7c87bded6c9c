package gapwise.synthesis.smallstudy;

/** Studies among which there is nothing to set small against large. */
final class NoVariation {
  static final AsymmetryFinding.Refused REFUSED =
      new AsymmetryFinding.Refused(new Refusal.AllAlike());

  private NoVariation() {}
}
