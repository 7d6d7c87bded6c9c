package gapwise.server.page.review;

import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.value.Shown;
import gapwise.review.Duty;
import gapwise.review.Review;
import gapwise.review.ReviewOutcome;
import gapwise.review.ReviewPerson;
import gapwise.server.page.Site;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/**
 * The form of a review.
 *
 * @param review as it stands
 * @param version which version that is, 0 for none
 * @param begun whether screening or extraction has begun, so that a change is an amendment
 */
public record ReviewEditView(Site site, Review review, int version, boolean begun) {
  /** Rows that are there to be filled, beside those that are. */
  private static final int EMPTY_ROWS = 3;

  public ReviewEditView {
    Objects.requireNonNull(site, "site");
    Objects.requireNonNull(review, "review");
  }

  /** A row of an outcome. */
  public record OutcomeRow(int number, String outcome, String matters, String time) {}

  /** A row of a person. */
  public record PersonRow(int number, String name, Set<Duty> duties) {}

  /** All methods. */
  public List<Method> methods() {
    return Method.vocabulary().all();
  }

  /** All outcomes. */
  public List<Outcome> outcomes() {
    return Outcome.vocabulary().all();
  }

  /** An outcome with the unit in which its difference is named. */
  public String label(Outcome outcome) {
    String unit = ReviewOutcome.unit(outcome.code());
    return unit.isEmpty() ? outcome.label() : outcome.label() + " (" + unit + ")";
  }

  /** All designs. */
  public List<Design> designs() {
    return List.of(Design.values());
  }

  /** All that a person can do. */
  public List<Duty> duties() {
    return List.of(Duty.values());
  }

  /** Rows of outcomes, some of them empty. */
  public List<OutcomeRow> outcomeRows() {
    List<OutcomeRow> rows = new ArrayList<>();
    for (ReviewOutcome one : review.outcomes()) {
      rows.add(new OutcomeRow(rows.size() + 1, one.outcome(), number(one.matters()), one.time()));
    }
    while (rows.size() < Math.min(Review.MOST, review.outcomes().size() + EMPTY_ROWS)) {
      rows.add(new OutcomeRow(rows.size() + 1, "", "", ""));
    }
    return rows;
  }

  /** Rows of people, some of them empty. */
  public List<PersonRow> personRows() {
    List<PersonRow> rows = new ArrayList<>();
    for (ReviewPerson one : review.people()) {
      rows.add(new PersonRow(rows.size() + 1, one.who().name(), Set.copyOf(one.duties())));
    }
    while (rows.size() < Math.min(Review.MOST, review.people().size() + EMPTY_ROWS)) {
      rows.add(new PersonRow(rows.size() + 1, "", Set.of()));
    }
    return rows;
  }

  /** A number as it is typed; empty where there is none. */
  public String number(OptionalDouble number) {
    return number.isPresent() ? Shown.centimetres(number.getAsDouble()) : "";
  }

  /** A year as it is typed; empty where there is none. */
  public String year(OptionalInt year) {
    return year.isPresent() ? Integer.toString(year.getAsInt()) : "";
  }
}
