package gapwise.paper.reading;

import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.paper.Page;
import gapwise.paper.Place;
import gapwise.paper.RunningText;
import gapwise.paper.table.Grid;
import gapwise.printed.Doubt;
import gapwise.printed.Numerals;
import gapwise.printed.Proposed;
import gapwise.printed.Proposer;
import gapwise.printed.Said;
import gapwise.printed.Setting;
import gapwise.printed.Statistic;
import gapwise.printed.Wanted;
import gapwise.untidy.FoundField;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Fields out of the running text of a paper. Prose does not tell for sure which group and which of
 * several counts it speaks of, so each is asked, with its sentence.
 */
final class TextFields {
  private static final int LONGEST_SENTENCE = 700;

  private static final Pattern SENTENCE =
      Pattern.compile(".{1," + LONGEST_SENTENCE + "}?(?:[.;?!](?= \\p{Lu}| [0-9]|$)|$)");

  private static final String NUMBER = "[0-9]{1,4}(?:[.,·][0-9]{1,3})?";
  private static final String UNIT = "(?:days?|weeks?|months?|years?|cm|mm)";
  private static final String SPREAD =
      "(?: ?\\((?:SD|range|IQR|interquartile range|95 ?% CI)[^()]{1,60}\\))?";

  /** A number with its unit, and what spread follows. */
  private static final Pattern MEASURE =
      Pattern.compile(
          NUMBER + "(?: ?± ?" + NUMBER + ")?(?:[–-]" + NUMBER + ")? ?" + UNIT + "\\b" + SPREAD);

  /** A count of a total. */
  private static final Pattern COUNT =
      Pattern.compile(
          "\\b[0-9]{1,4} of (?:the |all )?[0-9]{1,4}\\b(?: (?:patients|limbs|legs|defects|gaps))?"
              + "(?: ?\\([0-9]{1,3}(?:\\.[0-9])? ?%\\))?");

  private static final Pattern PATIENTS =
      Pattern.compile(Numerals.COUNT + " (?:patients|men and women)\\b");

  private static final Pattern EFFECT =
      Pattern.compile(
          "("
              + NUMBER
              + ") ?[(,\\[] ?9[05] ?% (?:CI|confidence interval)[:,]? ?("
              + NUMBER
              + ") ?(?:to|–|-|,) ?("
              + NUMBER
              + ")[)\\]]?");

  private static final Pattern DESIGN =
      Pattern.compile(
          "(?i)\\b(?:retrospective|prospective|randomi[sz]ed|controlled|consecutive)(?:,? (?:and )?"
              + "(?:comparative|controlled|consecutive|single-arm|multicent(?:er|re)))?"
              + " (?:comparison|cohort(?: study)?|case[- ]series|series|trial|case[- ]control study)\\b");

  private static final Pattern KIND =
      Pattern.compile("(?i)\\b(hazard|odds|risk|rate) ratio\\b|\\b(risk|mean) difference\\b");

  private final RunningText text;
  private final List<PaperField> found = new ArrayList<>();
  private final Optional<String> arm;

  private TextFields(RunningText text, Optional<String> arm) {
    this.text = text;
    this.arm = arm;
  }

  static List<PaperField> of(List<Page> pages, List<Grid> grids, List<PaperField> known) {
    RunningText text =
        RunningText.of(
            pages,
            (page, word) ->
                grids.stream()
                    .flatMap(grid -> grid.parts().stream())
                    .noneMatch(
                        part ->
                            part.page() == page.number()
                                && part.box().grown(2).holdsMiddleOf(word.box())));
    List<String> arms =
        known.stream().flatMap(f -> f.field().whose().arm().stream()).distinct().toList();
    TextFields fields =
        new TextFields(text, arms.size() == 1 ? Optional.of(arms.get(0)) : Optional.empty());
    Matcher sentences = SENTENCE.matcher(text.text());
    while (sentences.find()) {
      fields.sentence(sentences.group(), sentences.start());
    }
    fields.found.addAll(FrontMatter.of(pages));
    return fields.found;
  }

  private void sentence(String sentence, int start) {
    Matcher counts = COUNT.matcher(sentence);
    while (counts.find()) {
      int from = counts.start();
      int to = counts.end();
      Subjects.counted(sentence, from, to)
          .ifPresent(w -> propose(w, counts.group(), sentence, start + from, start + to));
    }
    Matcher measures = MEASURE.matcher(sentence);
    while (measures.find()) {
      int from = measures.start();
      int to = measures.end();
      Optional<Wanted> about = Subjects.measured(sentence, from, to);
      if (about.isPresent()) {
        propose(about.get(), measures.group(), sentence, start + from, start + to);
      } else {
        unnamed(measures.group(), sentence, start + from, start + to);
      }
    }
    Matcher patients = PATIENTS.matcher(sentence);
    while (patients.find()) {
      Numerals.count(patients.group(1))
          .ifPresent(
              number ->
                  add(
                      Wanted.column("arms", "patients"),
                      "patients",
                      Integer.toString(number),
                      sentence,
                      start + patients.start(),
                      start + patients.end()));
    }
    effect(sentence, start);
    Matcher designs = DESIGN.matcher(sentence);
    while (designs.find()) {
      propose(
          Wanted.column("studies", "design"),
          designs.group(),
          sentence,
          start + designs.start(),
          start + designs.end());
    }
  }

  /** A mean or median of something that the sentence does not name. */
  private void unnamed(String words, String sentence, int from, int to) {
    boolean median = centre(sentence, words).says(Statistic.MEDIAN);
    if (median || centre(sentence, words).says(Statistic.MEAN)) {
      Matcher number = Pattern.compile(NUMBER).matcher(words);
      Optional<Unit> unit = Unit.parse(words.replaceAll("(?s)^.*?(" + UNIT + ")\\b.*$", "$1"));
      if (number.find()) {
        String value = number.group().replace(',', '.').replace('·', '.');
        Proposed taken = Proposed.taken(median ? "median" : "mean", value, unit);
        add("outcomes", Optional.empty(), asked(taken, sentence), from, to);
      }
    }
  }

  private void effect(String sentence, int start) {
    Matcher effects = EFFECT.matcher(sentence);
    Matcher kinds = KIND.matcher(sentence);
    if (!kinds.find()) {
      return;
    }
    while (effects.find()) {
      int from = start + effects.start();
      int to = start + effects.end();
      Optional<String> outcome =
          Subjects.measured(sentence, effects.start(), effects.end())
              .flatMap(Wanted::outcome)
              .map(Outcome::code);
      String kind = kinds.group().toLowerCase(java.util.Locale.ROOT);
      String[] columns = {"effect_kind", "effect_estimate", "effect_lower", "effect_upper"};
      String[] values = {kind, effects.group(1), effects.group(2), effects.group(3)};
      for (int i = 0; i < columns.length; i++) {
        String value = values[i].replace(',', '.').replace('·', '.');
        Proposed taken = Proposed.taken(columns[i], value, Optional.empty());
        add("outcomes", outcome, asked(taken, sentence), from, to);
      }
    }
  }

  private void propose(Wanted wanted, String words, String sentence, int from, int to) {
    String plain = words.replaceAll(" (?:patients|limbs|legs|defects|gaps)\\b", "");
    plain = plain.replaceAll(" of (?:the|all) ", " of ");
    Setting setting =
        new Setting(
            centre(sentence, words), OptionalDouble.empty(), plain.matches("[0-9]+,[0-9].*"));
    for (Proposed value : Proposer.propose(plain, wanted, setting)) {
      if (value.state() != Proposed.State.LEFT) {
        add(wanted, asked(value, sentence), from, to);
      }
    }
  }

  /** Which centre the sentence names, so that 40 years is known to be a median. */
  private static Said centre(String sentence, String words) {
    String before = sentence.substring(0, Math.max(0, sentence.indexOf(words)));
    boolean median = before.matches("(?is).*\\bmedian\\b.*");
    boolean mean = before.matches("(?is).*\\b(?:mean|average)\\b.*") || words.contains("SD");
    return median == mean ? Said.NOTHING : Said.read(median ? "median" : "mean");
  }

  private static Proposed asked(Proposed value, String sentence) {
    return value.askedBecause(
        Doubt.REMARK,
        "Found in running text: '"
            + sentence.strip()
            + "' Confirm what it counts, and of which group.");
  }

  private void add(Wanted wanted, String column, String value, String sentence, int from, int to) {
    add(wanted, asked(Proposed.taken(column, value, Optional.empty()), sentence), from, to);
  }

  private void add(Wanted wanted, Proposed value, int from, int to) {
    add(wanted.into(), wanted.outcome().map(Outcome::code), value, from, to);
  }

  private void add(String into, Optional<String> outcome, Proposed value, int from, int to) {
    List<Place> places = text.places(from, to);
    if (places.isEmpty()) {
      return;
    }
    Place first = places.get(0);
    String words = text.text().substring(from, to);
    Place exact = new Place(first.page(), first.boxes(), words);
    found.add(
        new PaperField(
            new FoundField(
                into,
                new FoundField.Whose(
                    TableFields.NAME,
                    into.equals("studies") ? Optional.empty() : arm,
                    Optional.empty()),
                outcome,
                new FoundField.Row(Optional.empty(), Optional.empty()),
                value,
                TableFields.NAME,
                "page " + first.page(),
                Optional.empty(),
                words),
            Optional.of(exact)));
  }
}
