package gapwise.exchange;

import gapwise.evidence.vocabulary.Coded;
import gapwise.exchange.form.CellForm;
import gapwise.exchange.form.CodeForm;
import gapwise.exchange.form.ListForm;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * One column of the template, for whoever shows or fills it.
 *
 * @param name name in the header
 * @param title name for people
 * @param description how to fill it in
 * @param unit unit in words; empty when it has none or another column names it
 * @param required whether every row needs it
 * @param example a value that could stand in it; may be empty
 * @param number whether it holds a number
 * @param several whether it holds several values, separated by semicolons
 * @param choices the words of a closed list; empty where any words or numbers are taken
 */
public record TemplateColumn(
    String name,
    String title,
    String description,
    String unit,
    boolean required,
    String example,
    boolean number,
    boolean several,
    List<Choice> choices) {
  public TemplateColumn {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(title, "title");
    choices = List.copyOf(choices);
  }

  /**
   * One word of a closed list.
   *
   * @param code what stands in the cell
   * @param label its name for people
   */
  public record Choice(String code, String label) {}

  /** The same with fewer choices, where a row allows only some. */
  public TemplateColumn withChoices(List<Choice> fewer) {
    return new TemplateColumn(
        name, title, description, unit, required, example, number, several, fewer);
  }

  /** A text of this column as people read it: each code of its list by its label. */
  public String inWords(String text) {
    return several
        ? Arrays.stream(text.split(";"))
            .map(one -> labelled(one.strip()))
            .collect(Collectors.joining("; "))
        : labelled(text);
  }

  private String labelled(String text) {
    return choices.stream()
        .filter(choice -> choice.code().equals(text))
        .findFirst()
        .map(Choice::label)
        .orElse(text);
  }

  static TemplateColumn of(Field<?> field) {
    CellForm<?> form = field.form();
    boolean several = form instanceof ListForm<?>;
    boolean number = form.type() == CellForm.Type.NUMBER || form.type() == CellForm.Type.INTEGER;
    return new TemplateColumn(
        field.name(),
        field.title(),
        field.description(),
        field.unit(),
        field.required(),
        field.example(),
        number,
        several,
        choices(form instanceof ListForm<?> list ? list.item() : form));
  }

  private static List<Choice> choices(CellForm<?> form) {
    if (form instanceof CodeForm<?> codes) {
      return codes.allowed().stream().map(code -> new Choice(code, label(codes, code))).toList();
    }
    return form.allowed().stream().map(code -> new Choice(code, code)).toList();
  }

  private static String label(CodeForm<?> codes, String code) {
    return codes
        .parse()
        .apply(code)
        .filter(Coded.class::isInstance)
        .map(value -> ((Coded) value).label())
        .orElse(code);
  }
}
