package gapwise.exchange.form;

import gapwise.evidence.ReportedValue;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A category with its count: {@code excellent 12}. */
public record CategoryForm() implements CellForm<ReportedValue.Category> {
  private static final Pattern FORM = Pattern.compile("(?s)(.*\\S)\\s+(\\d{1,9})");

  @Override
  public ReportedValue.Category read(String text) throws UnreadableException {
    Matcher form = FORM.matcher(text);
    if (!form.matches() || form.group(1).isBlank()) {
      throw new UnreadableException(
          "not-a-category", "categories with counts such as 'excellent 12; good 5' were expected.");
    }
    return new ReportedValue.Category(form.group(1).strip(), Integer.parseInt(form.group(2)));
  }

  @Override
  public String write(ReportedValue.Category value) {
    return value.name() + " " + value.count();
  }
}
