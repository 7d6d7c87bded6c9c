package gapwise.decision.choice;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.cost.Amount;
import gapwise.decision.cost.CostEntries;
import gapwise.decision.cost.CostModel;
import gapwise.decision.cost.Costed;
import gapwise.decision.option.Aspect;
import gapwise.decision.option.Column;
import gapwise.decision.option.OptionTable;
import gapwise.evidence.vocabulary.Method;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What comes of reckoning the methods of a table in costs. */
public sealed interface CostedTable permits CostedMethods, CostedTable.NotReckoned {
  /** Draws; each runs a cohort over the whole horizon. Our choice. */
  int DRAWS = 1_000;

  /** The outcomes of a table that a course is made of. */
  static List<Aspect> needed() {
    return Courses.NEEDED;
  }

  /** Methods that are left out, with the reasons. */
  List<Named> leftOut();

  /**
   * Nothing was reckoned.
   *
   * @param problems what is missing or cannot be, by the name of the entry; at least one
   * @param leftOut methods of which too little is known
   */
  record NotReckoned(List<Problem> problems, List<Named> leftOut) implements CostedTable {
    public NotReckoned {
      problems = List.copyOf(problems);
      leftOut = List.copyOf(leftOut);
      if (problems.isEmpty()) {
        throw new IllegalArgumentException("what is not reckoned has a reason");
      }
    }
  }

  /** What is missing of the entries, or cannot be, whatever the table holds. */
  static List<Problem> missing(CostAsked asked) {
    Problems problems = new Problems();
    problems.addAll(CostModel.missing(asked.entries()));
    if (asked.upTo().isEmpty()) {
      problems.add("worth-up-to", "missing-entry", say("choice.missing-worth"));
    }
    if (asked.entries().treatments().size() < 2) {
      problems.add("treatment", "missing-entry", say("choice.missing-treatments"));
    }
    return problems.list();
  }

  /**
   * Reckons the methods of a table whose treatment has a price. What is missing of the entries is
   * named before anything is drawn.
   */
  static CostedTable of(OptionTable table, CostAsked asked, Posteriors posteriors) {
    Problems problems = new Problems();
    problems.addAll(missing(asked));
    List<Column> columns = columns(table, problems);
    if (!problems.isEmpty()) {
      return new NotReckoned(problems.list(), List.of());
    }
    Drawable drawable =
        Drawable.of(table, columns, posteriors, CostedTable::enteringNoCost, asked.unknowns())
            .only(asked.entries().treatments().keySet(), say("choice.no-price"));
    List<Method> methods = drawable.methods();
    if (methods.size() < 2) {
      problems.add(
          "treatment",
          "fewer-than-two-methods",
          say("choice.fewer-than-two", Map.of("methods", methods.size())));
    }
    if (asked.against().filter(one -> !methods.contains(one)).isPresent()) {
      problems.add(
          "against",
          "method-left-out",
          say("choice.against-left-out", Map.of("method", asked.against().get().shortLabel())));
    }
    return problems.isEmpty()
        ? reckoned(asked, drawable)
        : new NotReckoned(problems.list(), drawable.leftOut());
  }

  /** The outcomes that a course is made of, months among them in months. */
  private static List<Column> columns(OptionTable table, Problems problems) {
    List<Column> columns = new ArrayList<>();
    for (Aspect aspect : Courses.NEEDED) {
      Optional<Column> column =
          table.columns().stream().filter(one -> one.aspect() == aspect).findFirst();
      if (column.isEmpty()) {
        problems.add(
            aspect.code(),
            "not-in-the-table",
            say("choice.not-in-the-table", Map.of("outcome", aspect.label())));
      } else if (Range.usual(aspect, column.get().measure()).isEmpty()) {
        problems.add(
            aspect.code(),
            "other-unit",
            say("choice.other-unit", Map.of("outcome", aspect.label())));
      } else {
        columns.add(column.get());
      }
    }
    return columns;
  }

  /** No bone joins after an amputation, and the model asks for none. */
  private static Source enteringNoCost(Source source) {
    return source instanceof Source.Senseless senseless
        ? new Source.Certain(0, senseless.why())
        : source;
  }

  private static CostedTable reckoned(CostAsked asked, Drawable drawable) {
    List<Method> methods = drawable.methods();
    Courses courses = new Courses(drawable, asked.stages(), asked.seed());
    CostModel model = CostModel.of(priced(asked.entries(), methods), courses.all(), asked.seed());
    if (model instanceof CostModel.Incomplete incomplete) {
      return new NotReckoned(incomplete.problems(), drawable.leftOut());
    }
    return new CostedMethods(
        asked,
        drawable.columns(),
        methods,
        methods.stream().map(courses::stages).toList(),
        asked.against().map(methods::indexOf).orElse(0),
        (Costed) model,
        drawable.leftOut(),
        drawable.filled());
  }

  /** Prices of other methods would be drawn for nothing, and move what is drawn after them. */
  private static CostEntries priced(CostEntries entries, List<Method> methods) {
    Map<String, Amount> treatments = new HashMap<>(entries.treatments());
    treatments.keySet().retainAll(methods.stream().map(Method::code).toList());
    return new CostEntries(
        entries.currency(),
        entries.priceYear(),
        entries.amounts(),
        treatments,
        entries.utilities());
  }
}
