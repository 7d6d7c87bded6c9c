package gapwise.server.page.part;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.ReportedValue;
import gapwise.selection.Conversions;
import gapwise.selection.CountedAs;
import gapwise.selection.Question.SuspectedOverlap;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import gapwise.selection.SpreadBasis;
import gapwise.server.address.Address;
import gapwise.server.address.QuestionAddress;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The same question with other numbers of the same series, one click away: without what was worked
 * out, or in the other form of counting.
 *
 * @param words what is so now
 * @param link what the address takes instead
 * @param href the address
 */
public record Offer(String words, String link, String href) {

  /** What can be taken instead of what the rows stand on. */
  public static List<Offer> all(String path, Address address, Selection selection) {
    List<Offer> offers = new ArrayList<>();
    long workedOut =
        selection.rows().stream()
            .filter(row -> isWorkedOut(row, selection.question().conversions()))
            .count();
    if (workedOut > 0) {
      offers.add(
          new Offer(
              say("page.worked-out", Map.of("series", workedOut)),
              say("page.only-printed"),
              address.with(QuestionAddress.CONVERSIONS, Conversions.NONE.code()).at(path)));
    }
    if (selection.notes().stream().anyMatch(note -> note.code().equals("overlap-suspected"))) {
      offers.add(
          new Offer(
              say("page.suspected-pooled"),
              say("page.leave-suspected-out"),
              address.with(QuestionAddress.OVERLAP, SuspectedOverlap.LEAVE_OUT.code()).at(path)));
    }
    otherForm(selection)
        .ifPresent(
            form ->
                offers.add(
                    new Offer(
                        "",
                        say(
                            form == CountedAs.MEANS
                                ? "page.take-means-for-each-patient"
                                : "page.take-events-among-patients"),
                        address.with(QuestionAddress.COUNTED, form.code()).at(path))));
    return offers;
  }

  private static boolean isWorkedOut(SelectedRow row, Conversions conversions) {
    if (!(row.value() instanceof ReportedValue.Quantity quantity)
        || conversions == Conversions.NONE
        || row.speaksOf().isEmpty()) {
      return false;
    }
    SpreadBasis basis = SpreadBasis.of(row, quantity.summary(), conversions);
    boolean median = quantity.summary().mean().isEmpty() && basis != SpreadBasis.NONE;
    return median || basis.isWorkedOut();
  }

  /** The form that some series report and none is taken in; empty where all report one. */
  private static Optional<CountedAs> otherForm(Selection selection) {
    boolean both =
        selection.notes().stream().anyMatch(note -> note.code().equals("counted-two-ways"));
    return selection
        .countedAs()
        .filter(taken -> both)
        .map(taken -> taken == CountedAs.MEANS ? CountedAs.EVENTS : CountedAs.MEANS);
  }

  /** What an address takes of these, each with the same address without it. */
  public static List<FilterForm.On> taken(String path, Address address) {
    List<FilterForm.On> on = new ArrayList<>();
    if (address.has(QuestionAddress.CONVERSIONS, Conversions.NONE.code())) {
      on.add(
          new FilterForm.On(
              say("page.as-printed"), path, address.without(List.of(QuestionAddress.CONVERSIONS))));
    }
    if (address.has(QuestionAddress.OVERLAP, SuspectedOverlap.LEAVE_OUT.code())) {
      on.add(
          new FilterForm.On(
              say("answer.among-without-suspected"),
              path,
              address.without(List.of(QuestionAddress.OVERLAP))));
    }
    for (CountedAs form : CountedAs.values()) {
      if (address.has(QuestionAddress.COUNTED, form.code())) {
        on.add(
            new FilterForm.On(
                form.label(), path, address.without(List.of(QuestionAddress.COUNTED))));
      }
    }
    return on;
  }
}
