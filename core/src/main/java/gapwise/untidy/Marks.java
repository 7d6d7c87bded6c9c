package gapwise.untidy;

import gapwise.printed.Printed;
import gapwise.printed.PrintedValue;

/** Marks that stand for another cell. */
final class Marks {
  private Marks() {}

  static boolean isDitto(String text) {
    return Printed.read(text) instanceof PrintedValue.Ditto;
  }
}
