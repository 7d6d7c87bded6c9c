package gapwise.decision.option;

import gapwise.decision.situation.Attribute;
import gapwise.decision.situation.Fit;
import gapwise.decision.situation.Matches;
import gapwise.evidence.vocabulary.Method;
import gapwise.selection.SelectedRow;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * How the groups behind the numbers of one method match the situation, one thing at a time,
 * whichever of its outcomes they report; each group counts for its patients, once.
 *
 * @param method what was done
 * @param groups how many
 * @param each what is asked of the patient, with the shares; {@link Fit#NONE} for the length of an
 *     amputation, which no paper gives
 */
public record FitOfMethod(Method method, int groups, Map<Attribute, Fit> each) {
  public FitOfMethod {
    Objects.requireNonNull(method, "method");
    each = Map.copyOf(each);
  }

  /**
   * The shares of one attribute.
   *
   * @throws java.util.NoSuchElementException where it is not asked
   */
  public Fit of(Attribute attribute) {
    return Optional.ofNullable(each.get(attribute)).orElseThrow();
  }

  /** Of every method that has groups, in order. */
  public static List<FitOfMethod> of(OptionTable table) {
    Map<Method, Map<List<String>, SelectedRow>> groups = new LinkedHashMap<>();
    for (Option option : table.options()) {
      groups.put(option.method(), new LinkedHashMap<>());
    }
    for (Column column : table.columns()) {
      for (SelectedRow row : column.rows()) {
        Map<List<String>, SelectedRow> own = groups.get(row.arm().method().principal());
        if (own != null) {
          own.putIfAbsent(List.of(row.study().id(), row.arm().id()), row);
        }
      }
    }
    List<FitOfMethod> fits = new ArrayList<>();
    groups.forEach(
        (method, rows) -> {
          if (!rows.isEmpty()) {
            fits.add(of(table, method, List.copyOf(rows.values())));
          }
        });
    return fits;
  }

  private static FitOfMethod of(OptionTable table, Method method, List<SelectedRow> rows) {
    List<Matches> matches = rows.stream().map(row -> Matches.of(table.situation(), row)).toList();
    Map<Attribute, Fit> each = new EnumMap<>(Attribute.class);
    for (Attribute attribute : table.situation().asked()) {
      if (attribute == Attribute.LENGTH && Aspect.isAmputation(method)) {
        each.put(attribute, Fit.NONE);
        continue;
      }
      List<Fit.Part> parts = new ArrayList<>();
      for (int i = 0; i < rows.size(); i++) {
        // A group that does not say how many it has still counts.
        parts.add(
            new Fit.Part(
                matches.get(i).of(attribute), Math.max(1, rows.get(i).speaksOf().orElse(1))));
      }
      each.put(attribute, Fit.of(parts));
    }
    return new FitOfMethod(method, rows.size(), each);
  }
}
