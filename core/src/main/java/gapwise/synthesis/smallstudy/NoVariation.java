package gapwise.synthesis.smallstudy;

import gapwise.problem.Problem;

/** Studies among which there is nothing to set small against large. */
final class NoVariation {
  static final AsymmetryFinding.Refused REFUSED =
      new AsymmetryFinding.Refused(
          new Problem(
              "",
              "no-variation",
              "studies do not differ in size, or lie on one line to rounding, so that there is"
                  + " nothing to test"));

  private NoVariation() {}
}
