package gapwise.server.address;

import gapwise.figure.drawing.Medium;
import gapwise.figure.file.FigureFile;
import gapwise.figure.file.PngSize;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Reads what an address wishes of the file of a figure: {@code for} (a medium), {@code sheet}, and
 * for pictures {@code width-mm}, {@code width-px}, {@code dpi}.
 */
public final class FigureAddress {
  /** Names in an address that speak of the file and not of the question. */
  public static final List<String> NAMES = List.of("for", "sheet", "width-mm", "width-px", "dpi");

  private FigureAddress() {}

  /**
   * What an address wishes of a drawing or picture.
   *
   * @throws WrongInputException for a medium that there is not, or a size out of bounds
   */
  public static FigureFile.Wish wish(Address address) {
    String code = address.first("for");
    Medium medium =
        code.isEmpty()
            ? Medium.PAGE
            : Medium.of(code).orElseThrow(() -> wrong("for", code, "one of " + Medium.codes()));
    OptionalInt sheet = whole(address, "sheet", "a number from 1");
    OptionalDouble millimetres = number(address, "width-mm", "a width in millimetres such as 85");
    OptionalInt pixels = whole(address, "width-px", "a width in pixels such as 1920");
    OptionalDouble dots = number(address, "dpi", "dots per inch such as 300");
    boolean sized = millimetres.isPresent() || pixels.isPresent() || dots.isPresent();
    return new FigureFile.Wish(
        medium,
        sheet.orElse(1),
        sized ? Optional.of(PngSize.asked(medium, millimetres, pixels, dots)) : Optional.empty());
  }

  private static OptionalInt whole(Address address, String name, String expected) {
    String text = address.first(name);
    if (text.isEmpty()) {
      return OptionalInt.empty();
    }
    if (!text.matches("\\d{1,6}")) {
      throw wrong(name, text, expected);
    }
    return OptionalInt.of(Integer.parseInt(text));
  }

  private static OptionalDouble number(Address address, String name, String expected) {
    String text = address.first(name);
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    if (!text.matches("\\d{1,6}([.,]\\d{1,3})?")) {
      throw wrong(name, text, expected);
    }
    return OptionalDouble.of(Double.parseDouble(text.replace(',', '.')));
  }

  private static WrongInputException wrong(String name, String found, String expected) {
    return new WrongInputException(
        List.of(
            new Problem(
                name, "unknown-value", "Found '" + found + "'; expected " + expected + ".")));
  }
}
