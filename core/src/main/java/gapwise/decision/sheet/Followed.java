package gapwise.decision.sheet;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.option.Cell;
import gapwise.decision.option.Option;
import gapwise.decision.option.OptionTable;
import gapwise.evidence.ArmFollowUp;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;

/**
 * How long the people behind the numbers were followed: the time point of every share.
 *
 * @param months averages of the groups that give one
 * @param silent groups that give none
 */
record Followed(List<Double> months, int silent) {
  Followed {
    months = List.copyOf(months);
  }

  static Followed of(OptionTable table, List<Option> options) {
    Map<List<String>, gapwise.selection.SelectedRow> groups = new java.util.LinkedHashMap<>();
    for (Option option : options) {
      for (Cell cell : option.cells()) {
        if (cell instanceof Cell.Known known) {
          known
              .line()
              .rows()
              .forEach(
                  one ->
                      groups.putIfAbsent(
                          List.of(one.row().study().id(), one.row().arm().id()), one.row()));
        }
      }
    }
    List<Double> months = new ArrayList<>();
    int silent = 0;
    for (var row : groups.values()) {
      var centre = ArmFollowUp.of(row.study(), row.arm()).map(ArmFollowUp::centreMonths);
      if (centre.isPresent() && centre.get().isPresent()) {
        months.add(centre.get().getAsDouble());
      } else {
        silent++;
      }
    }
    return new Followed(months, silent);
  }

  static String plain(OptionTable table, List<Option> options) {
    Followed followed = of(table, options);
    return followed.months().isEmpty()
        ? say("sheet.followed-unknown")
        : say("sheet.followed", followed.ends());
  }

  /** In a sentence for the team. */
  static String team(OptionTable table, List<Option> options) {
    Followed followed = of(table, options);
    return followed.months().isEmpty()
        ? say("sheet.team-followed-unknown")
        : followed.silent() == 0
            ? say(
                "sheet.team-followed",
                Map.of(
                    "from", followed.ends().get("from"),
                    "to", followed.ends().get("to"),
                    "groups", followed.months().size()))
            : say(
                "sheet.team-followed-silent",
                Map.of(
                    "from", followed.ends().get("from"),
                    "to", followed.ends().get("to"),
                    "groups", followed.months().size(),
                    "silent", followed.silent()));
  }

  private Map<String, String> ends() {
    return Map.of(
        "from", Long.toString(Math.round(Collections.min(months))),
        "to", Long.toString(Math.round(Collections.max(months))));
  }
}
