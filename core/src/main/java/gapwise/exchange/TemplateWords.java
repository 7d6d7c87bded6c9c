package gapwise.exchange;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.UnaryOperator;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Sheets, columns and codes of the template by their words, for pages on which people see no
 * template: what the import says of "unit_counted" is said there of “Counted”.
 */
public final class TemplateWords {
  private static final Map<String, String> PARTS =
      Map.of(
          Template.STUDIES, "The paper",
          Template.ARMS, "Group",
          Template.OUTCOMES, "Outcome",
          Template.PATIENTS, "Patient",
          Template.APPRAISAL, "Appraisal",
          Template.CURVES, "Curve");

  /** The row or the name that stands for all groups together. */
  private static final String ALL_GROUPS = "all groups";

  /** A name of a column of two words or more; one word alone may be meant as a word. */
  private static final Pattern NAME = Pattern.compile("\\b[a-z][a-z0-9]*(?:_[a-z0-9]+)+\\b");

  private static final Pattern QUOTED_CODE = Pattern.compile("'([a-z0-9]+(?:-[a-z0-9]+)*)'");

  private static final Pattern ALL = Pattern.compile("\\b" + Template.ALL + "\\b");

  private TemplateWords() {}

  /** What a row of a sheet tells of. */
  public static String part(String sheet) {
    return Objects.requireNonNull(PARTS.get(sheet), sheet);
  }

  /** The text of one cell: a code by its label, every other text as it stands. */
  public static String cell(String sheet, String column, String text) {
    if (column.equals(Template.ARM) && text.equals(Template.ALL)) {
      return ALL_GROUPS;
    }
    return Template.column(sheet, column).map(known -> known.inWords(text)).orElse(text);
  }

  /**
   * What tells a row from its neighbours, in the order of the columns; what is empty is left out.
   *
   * @param texts gives the text of a column, empty text for none
   */
  public static List<String> row(
      String sheet, Collection<String> columns, UnaryOperator<String> texts) {
    return columns.stream()
        .filter(column -> Template.column(sheet, column).isPresent())
        .filter(column -> !texts.apply(column).isEmpty())
        .map(column -> cell(sheet, column, texts.apply(column)))
        .toList();
  }

  /**
   * A sentence about a sheet: names of columns become their headings, codes in quotation marks
   * their labels.
   */
  public static String said(String sheet, String sentence) {
    String named = NAME.matcher(sentence).replaceAll(found -> heading(sheet, found));
    String coded = QUOTED_CODE.matcher(named).replaceAll(found -> label(sheet, found));
    return ALL.matcher(coded).replaceAll(ALL_GROUPS);
  }

  /** A sentence about a study of which the sheet is not known. */
  public static String said(String sentence) {
    return said(Template.STUDIES, sentence);
  }

  /** By the sheet itself first; a sentence of one sheet may name a column of another. */
  private static Stream<TemplateColumn> columns(String sheet) {
    return Stream.concat(
        Template.columns(sheet).stream(),
        Template.names().stream().flatMap(other -> Template.columns(other).stream()));
  }

  private static String heading(String sheet, MatchResult found) {
    return Matcher.quoteReplacement(
        columns(sheet)
            .filter(column -> column.name().equals(found.group()))
            .findFirst()
            .map(column -> "“" + column.title() + "”")
            .orElse(found.group()));
  }

  private static String label(String sheet, MatchResult found) {
    return Matcher.quoteReplacement(
        Template.columns(sheet).stream()
            .flatMap(column -> column.choices().stream())
            .filter(choice -> choice.code().equals(found.group(1)))
            .findFirst()
            .map(choice -> "“" + choice.label() + "”")
            .orElse(found.group()));
  }
}
