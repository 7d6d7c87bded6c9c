package gapwise.server.address;

import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a list of groups of patients can show of each, beside its study and method. An address names
 * those chosen by {@code column}; without a name the usual ones stand.
 */
public enum ListColumn {
  MISSING_BONE("Missing bone", true, false),
  VALUE("Value of the outcome", true, true),
  PATIENTS("Patients", true, true),
  FOLLOWED("Followed", true, true),
  EXTRACTION("Extraction", true, false),
  YEAR("Year", false, true),
  COUNTRY("Country", false, false),
  DESIGN("Design", false, false),
  RISK("Risk of bias", false, false),
  BONES("Bones", false, false),
  INFECTED("Infected at the start", false, false);

  /** The name in an address. */
  public static final String NAME = "column";

  private final String label;
  private final boolean usual;
  private final boolean number;

  ListColumn(String label, boolean usual, boolean number) {
    this.label = label;
    this.usual = usual;
    this.number = number;
  }

  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public String label() {
    return label;
  }

  public boolean isNumber() {
    return number;
  }

  private boolean isUsual() {
    return usual;
  }

  /**
   * The columns that an address asks for, in the order in which they are shown.
   *
   * @throws WrongInputException naming every word that is no column
   */
  public static List<ListColumn> read(Address address) {
    List<String> asked = address.all(NAME);
    List<String> known = Stream.of(values()).map(ListColumn::code).toList();
    List<Problem> problems = new ArrayList<>();
    for (String code : asked) {
      if (!known.contains(code)) {
        String expected = "expected one of " + String.join(", ", known);
        problems.add(new Problem(NAME, "unknown-code", "'" + code + "' is unknown; " + expected));
      }
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems);
    }
    return Stream.of(values())
        .filter(column -> asked.isEmpty() ? column.usual : asked.contains(column.code()))
        .toList();
  }

  /** The address without the names of columns where they are just the usual ones. */
  public static Address tidy(Address address) {
    String usual =
        Stream.of(values())
            .filter(ListColumn::isUsual)
            .map(ListColumn::code)
            .sorted()
            .collect(Collectors.joining(" "));
    String asked = address.all(NAME).stream().sorted().collect(Collectors.joining(" "));
    return asked.equals(usual) ? address.without(List.of(NAME)) : address;
  }
}
