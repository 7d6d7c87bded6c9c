package gapwise.server.address;

import gapwise.answer.LengthShape;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads how a question is looked at over the length of missing bone, for the page and the API, from
 * an address: {@code shape} (line, curve) and {@code cuts} (cm).
 */
public final class LengthAddress {
  private static final int MOST_CUTS = 12;

  private LengthAddress() {}

  /**
   * The shape that an address asks for, a line unless it says otherwise.
   *
   * @throws WrongInputException for a shape there is not
   */
  public static LengthShape shape(Address address) {
    String code = address.first("shape");
    if (code.isEmpty()) {
      return LengthShape.LINE;
    }
    return LengthShape.of(code)
        .orElseThrow(() -> wrong("shape", "unknown-code", code, "line or curve"));
  }

  private static WrongInputException wrong(
      String name, String code, String found, String expected) {
    String message = "'" + found + "'; expected " + expected;
    return new WrongInputException(List.of(new Problem(name, code, message)));
  }

  /** The cuts between bands in centimetres, rising; the usual ones unless the address has some. */
  public static List<Double> cuts(Address address) {
    String text = address.first("cuts");
    if (text.isEmpty()) {
      return LengthBand.USUAL.stream()
          .skip(1)
          .map(band -> band.lengths().fromCentimetres())
          .toList();
    }
    List<Double> cuts = new ArrayList<>();
    for (String part : text.split("[,;\\s]+")) {
      double last = cuts.isEmpty() ? 0 : cuts.get(cuts.size() - 1);
      boolean number = part.matches("\\d{1,3}(\\.\\d{1,2})?");
      if (!number || Double.parseDouble(part) <= last || cuts.size() == MOST_CUTS) {
        throw wrong(
            "cuts",
            "not-rising-lengths",
            text,
            "up to " + MOST_CUTS + " rising lengths in cm such as 2, 4, 6.5");
      }
      cuts.add(Double.valueOf(part));
    }
    return List.copyOf(cuts);
  }
}
