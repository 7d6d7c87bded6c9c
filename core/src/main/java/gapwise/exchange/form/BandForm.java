package gapwise.exchange.form;

import gapwise.evidence.DefectLength;
import gapwise.evidence.unit.LengthRange;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** How many defects lie in a band of length: {@code 2-4: 5} or {@code 8+: 3}, in centimetres. */
public record BandForm() implements CellForm<DefectLength.Band> {
  private static final Pattern FORM =
      Pattern.compile("([\\d.,]+)\\s*(?:[-–]\\s*([\\d.,]+)|\\+)\\s*:\\s*(\\d{1,6})");

  @Override
  public DefectLength.Band read(String text) throws UnreadableException {
    Matcher form = FORM.matcher(text);
    if (!form.matches()) {
      throw new UnreadableException(
          "not-a-band", "bands such as '2-4: 5; 4-6: 3; 6+: 2' were expected, in centimetres.");
    }
    double from = NumberForm.plain().read(form.group(1));
    double to =
        form.group(2) == null ? Double.POSITIVE_INFINITY : NumberForm.plain().read(form.group(2));
    if (to < from) {
      throw new UnreadableException(
          "not-a-band", "a band that does not end before it starts was expected.");
    }
    return new DefectLength.Band(new LengthRange(from, to), Integer.parseInt(form.group(3)));
  }

  @Override
  public String write(DefectLength.Band value) {
    double to = value.range().toCentimetres();
    return NumberForm.plainText(value.range().fromCentimetres())
        + (Double.isInfinite(to) ? "+" : "-" + NumberForm.plainText(to))
        + ": "
        + value.count();
  }
}
