package gapwise.exchange;

import gapwise.evidence.Appraisal;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Day;
import gapwise.evidence.vocabulary.Instrument;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.exchange.form.CodeForm;
import gapwise.exchange.form.DayForm;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The sheet of appraisal: one row for each item judged, and one for the judgement on the whole. */
final class AppraisalSheet {
  /** Stands in the column of items for the judgement on the whole. */
  static final String OVERALL = "overall";

  private static final Field<Instrument> INSTRUMENT =
      Field.of(
              "instrument",
              "Instrument",
              "By which published instrument the study was judged. Its text is read beside.",
              CodeForm.of(Instrument.vocabulary()))
          .asRequired()
          .like("robins-i");
  private static final Field<String> VERSION =
      Field.text(
          "instrument_version",
          "Version of the instrument",
          "Blank means the version that the readme names.");
  private static final Field<Outcome> OUTCOME =
      Field.of(
              "outcome",
              "Outcome",
              "The outcome that was judged, where the instrument asks for one. Blank means the study"
                  + " as a whole.",
              CodeForm.of(Outcome.vocabulary()))
          .like("union");
  private static final Field<String> COMPARISON =
      Field.text(
          "comparison",
          "Comparison",
          "The comparison that was judged, in words, such as 'transport against membrane'.");
  static final Field<String> ITEM =
      Field.of(
              "item",
              "Item",
              "The item or domain, or 'overall' for the judgement on the whole as people settled it.",
              words(Stream.concat(instruments().flatMap(AppraisalSheet::items), overall())))
          .asRequired()
          .like("confounding");
  static final Field<String> JUDGEMENT =
      Field.of(
              "judgement",
              "Judgement",
              "What the instrument allows for the item; the readme says which.",
              words(instruments().flatMap(one -> one.judgementCodes().stream())))
          .asRequired()
          .like("serious");
  private static final Field<String> REASON =
      Field.text("reason", "Reason", "Why it was judged so.");
  private static final Field<String> PLACE =
      Field.text("place", "Place in the paper", "Where the reason stands.").like("p. 411");
  private static final Field<List<String>> BY =
      Field.list("by", "Judged by", "Initials of those who judged or settled it.").like("AB; CD");
  private static final Field<Day> ON =
      Field.of(
              "on",
              "Judged on",
              "The day on which it was settled; the latest of the rows counts.",
              new DayForm())
          .like("2026-05-14");

  static final Sheet SHEET =
      new Sheet(
          "appraisal",
          "One row for each item of a published instrument that people judged, and one with item"
              + " 'overall' for the judgement on the whole. "
              + instruments().map(AppraisalSheet::told).collect(Collectors.joining(" ")),
          List.of(
              Keys.STUDY,
              INSTRUMENT,
              VERSION,
              OUTCOME,
              COMPARISON,
              ITEM,
              JUDGEMENT,
              REASON,
              PLACE,
              BY,
              ON));

  private AppraisalSheet() {}

  private static Stream<Instrument> instruments() {
    return Instrument.vocabulary().all().stream();
  }

  private static Stream<String> items(Instrument instrument) {
    return instrument.items().stream().map(Instrument.Item::code);
  }

  private static Stream<String> overall() {
    return Stream.of(OVERALL);
  }

  /** Whether a word fits is told by the instrument of the row; here it is only spelt alike. */
  private static CodeForm<String> words(Stream<String> codes) {
    Set<String> all = codes.collect(Collectors.toCollection(LinkedHashSet::new));
    return new CodeForm<>(
        List.copyOf(all),
        text -> Optional.of(text.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_]+", "-")),
        word -> word);
  }

  /** An instrument with its version and what it allows, for the readme. */
  private static String told(Instrument instrument) {
    return instrument.code()
        + " ("
        + instrument.about()
        + "; version "
        + instrument.version()
        + ") allows "
        + codes(instrument.judgements())
        + ", overall "
        + codes(instrument.overall())
        + ".";
  }

  private static String codes(List<Instrument.Judgement> judgements) {
    return judgements.stream().map(Instrument.Judgement::code).collect(Collectors.joining(", "));
  }

  /**
   * What one row holds.
   *
   * @param study of which study
   * @param item code of the item, or {@link #OVERALL}
   * @param answer an appraisal of this one answer; empty when something in the row is wrong
   */
  record AppraisalLine(String study, String item, Optional<Appraisal> answer) {}

  /** Empty when the row does not say what it is about. */
  static Optional<AppraisalLine> read(RowReader row) {
    Optional<String> study = row.get(Keys.STUDY);
    Optional<Instrument> instrument = row.get(INSTRUMENT);
    Optional<String> version = row.get(VERSION);
    Optional<Outcome> outcome = row.get(OUTCOME);
    Optional<String> comparison = row.get(COMPARISON);
    Optional<String> item = row.get(ITEM);
    Optional<String> judgement = row.get(JUDGEMENT);
    Optional<String> reason = row.get(REASON);
    Optional<String> place = row.get(PLACE);
    List<String> by = row.get(BY).orElse(List.of());
    Optional<Day> on = row.get(ON);
    if (study.isEmpty() || item.isEmpty()) {
      return Optional.empty();
    }
    if (instrument.isPresent()) {
      fit(row, instrument.get(), item.get(), judgement);
    }
    if (!row.isSound() || instrument.isEmpty() || judgement.isEmpty()) {
      return Optional.of(new AppraisalLine(study.get(), item.get(), Optional.empty()));
    }
    boolean whole = item.get().equals(OVERALL);
    Appraisal one =
        new Appraisal(
            instrument.get(),
            version.orElse(instrument.get().version()),
            outcome,
            comparison,
            whole
                ? List.of()
                : List.of(new Appraisal.Answer(item.get(), judgement.get(), reason, place)),
            whole
                ? Optional.of(new Appraisal.Overall(judgement.get(), reason, place))
                : Optional.empty(),
            by,
            on);
    return Optional.of(new AppraisalLine(study.get(), item.get(), Optional.of(one)));
  }

  private static void fit(
      RowReader row, Instrument instrument, String item, Optional<String> judgement) {
    Optional<List<Instrument.Judgement>> allowed =
        item.equals(OVERALL)
            ? Optional.of(instrument.overall())
            : instrument.item(item).map(instrument::allowed);
    if (allowed.isEmpty()) {
      row.refuse(
          ITEM,
          "unknown-item",
          instrument.label()
              + " has no item '"
              + item
              + "'. Its items are "
              + items(instrument).collect(Collectors.joining(", "))
              + ", and overall.");
      return;
    }
    boolean fits =
        judgement.isEmpty()
            || allowed.get().stream().anyMatch(one -> one.code().equals(judgement.get()));
    if (!fits) {
      row.refuse(
          JUDGEMENT,
          "judgement-not-allowed",
          instrument.label()
              + " does not allow '"
              + judgement.get()
              + "' for "
              + item
              + ". One of these was expected: "
              + codes(allowed.get())
              + ".");
    }
  }

  /** A row for each answer, then one for the judgement on the whole. */
  static List<RowWriter> write(Study study) {
    List<RowWriter> rows = new ArrayList<>();
    for (Appraisal appraisal : study.appraisals()) {
      for (Appraisal.Answer answer : appraisal.answers()) {
        rows.add(
            write(
                study.id(),
                appraisal,
                answer.item(),
                answer.judgement(),
                answer.reason(),
                answer.place()));
      }
      appraisal
          .overall()
          .ifPresent(
              whole ->
                  rows.add(
                      write(
                          study.id(),
                          appraisal,
                          OVERALL,
                          whole.judgement(),
                          whole.reason(),
                          whole.place())));
    }
    return rows;
  }

  private static RowWriter write(
      String study,
      Appraisal appraisal,
      String item,
      String judgement,
      Optional<String> reason,
      Optional<String> place) {
    RowWriter row = new RowWriter(SHEET);
    row.put(Keys.STUDY, study);
    row.put(INSTRUMENT, appraisal.instrument());
    if (!appraisal.version().equals(appraisal.instrument().version())) {
      row.put(VERSION, appraisal.version());
    }
    row.put(OUTCOME, appraisal.outcome());
    row.put(COMPARISON, appraisal.comparison());
    row.put(ITEM, item);
    row.put(JUDGEMENT, judgement);
    row.put(REASON, reason);
    row.put(PLACE, place);
    if (!appraisal.by().isEmpty()) {
      row.put(BY, appraisal.by());
    }
    row.put(ON, appraisal.on());
    return row;
  }
}
