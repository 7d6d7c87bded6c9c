package gapwise.untidy;

import gapwise.printed.Proposed;
import gapwise.problem.Problems;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** What a reading of an example got right, asked, missed or wrong, and what it made up. */
record Judged(Map<String, Integer> counts, List<String> lines) {

  static Judged of(Example example) {
    Preview preview = UntidySheets.read(example.file(), List.of(), new Problems());
    Map<String, Integer> counts = new TreeMap<>();
    List<String> lines = new ArrayList<>();
    Set<String> places = new HashSet<>();
    for (String truth : example.truth()) {
      String verdict = verdict(truth, preview, places);
      counts.merge(verdict, 1, Integer::sum);
      if (!verdict.startsWith("right")
          && !verdict.equals("asked as it should be")
          && !verdict.equals("left as it should be")) {
        lines.add(verdict + ": " + truth + " found " + at(place(truth), preview));
      }
    }
    for (FoundField field : preview.taken()) {
      if (example.truth().stream()
          .noneMatch(
              truth ->
                  truth.endsWith(told(field))
                      || place(truth).equals(cell(field))
                      || cell(field).endsWith("!" + place(truth)))) {
        counts.merge("taken where nothing was said of the place", 1, Integer::sum);
      }
    }
    return new Judged(counts, lines);
  }

  private static String place(String truth) {
    return truth.replaceFirst("^(ask|left) ", "").split(" ", 2)[0];
  }

  private static String verdict(String truth, Preview preview, Set<String> places) {
    List<FoundField> here =
        preview.fields().stream().filter(field -> isAt(place(truth), field)).toList();
    boolean taken = here.stream().anyMatch(field -> field.value().state() == Proposed.State.TAKEN);
    if (truth.startsWith("left ")) {
      return taken ? "wrong: taken though to be left" : "left as it should be";
    }
    boolean ask = truth.startsWith("ask ");
    String wanted = truth.replaceFirst("^ask ", "").split(" ", 2)[1];
    for (FoundField field : here) {
      if (matches(wanted, field)) {
        boolean asked = field.value().state() == Proposed.State.ASKED;
        return ask
            ? (asked ? "asked as it should be" : "wrong: taken silently")
            : asked ? "asked" : "right";
      }
    }
    if (here.stream().anyMatch(field -> field.value().state() == Proposed.State.ASKED)) {
      return ask ? "asked as it should be" : "asked";
    }
    boolean other =
        here.stream()
            .anyMatch(
                field ->
                    told(field).split("=", 2)[0].equals(wanted.split("=", 2)[0])
                        && field.value().state() == Proposed.State.TAKEN);
    return other ? "wrong: another value" : "missed";
  }

  private static boolean isAt(String place, FoundField field) {
    return place.contains("!") ? cell(field).equals(place) : field.cell().equals(place);
  }

  private static String cell(FoundField field) {
    return field.sheet() + "!" + field.cell();
  }

  private static boolean matches(String wanted, FoundField field) {
    String told = told(field);
    return told.equals(wanted)
        || told.replaceFirst("^(arms|outcomes) [^ /]+/", "$1 ").equals(wanted);
  }

  /** A field as the truth tells it. */
  static String told(FoundField field) {
    String who =
        field
            .whose()
            .patient()
            .orElseGet(
                () -> field.whose().study() + field.whose().arm().map(arm -> "/" + arm).orElse(""));
    return field.into()
        + " "
        + who
        + field.outcome().map(outcome -> " " + outcome).orElse("")
        + " "
        + field.value().column()
        + "="
        + field.value().text()
        + field.value().unit().map(unit -> " " + unit.symbol()).orElse("");
  }

  private static String at(String place, Preview preview) {
    return preview.fields().stream()
        .filter(field -> isAt(place, field))
        .map(field -> told(field) + " " + field.value().state() + " " + field.value().why())
        .toList()
        .toString();
  }
}
