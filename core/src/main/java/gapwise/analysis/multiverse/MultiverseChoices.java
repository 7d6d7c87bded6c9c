package gapwise.analysis.multiverse;

import gapwise.synthesis.multiverse.Choice;
import gapwise.synthesis.multiverse.Settings;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The choices of a multiverse in the order in which a result tells them.
 *
 * @param all what is asked of analyses first, then what narrows the rows
 */
record MultiverseChoices(List<Choice> all) {
  static final String MODEL = "model";
  static final String SCALE = "scale";
  static final String EMPTY_CELLS = "emptyCells";
  static final String MISSING_SPREAD = "missingSpread";
  static final String ESTIMATOR = "betweenStudyVariance";
  static final String INTERVAL = "interval";
  static final String MODERATOR_TEST = "moderatorTest";
  static final String ROBUST_VARIANCE = "robustVariance";
  static final String LEAVE_ONE_OUT = "leaveOneOut";

  /** The level of leaving means without a standard deviation out, as every other task does. */
  static final String LEAVE_OUT = "leave-out";

  /** The level of lending them that of the others. */
  static final String BORROW = "borrow";

  /** The level of leaving out no study. */
  static final String NOBODY = "none";

  MultiverseChoices {
    all = List.copyOf(all);
  }

  /**
   * The choices.
   *
   * @param lacksSpread whether a row with a mean has no standard deviation; where none lacks one,
   *     nothing can be chosen about it
   */
  static MultiverseChoices of(Vary vary, boolean lacksSpread, List<Choice> ofRows) {
    List<Choice> all = new ArrayList<>();
    add(all, MODEL, vary.models());
    add(all, SCALE, vary.scales());
    add(all, EMPTY_CELLS, vary.emptyCells().stream().map(AskedCells::words).toList());
    add(all, MISSING_SPREAD, lacksSpread ? vary.missingSpread() : List.of());
    add(all, ESTIMATOR, vary.estimators());
    add(all, INTERVAL, vary.limits().allIntervals());
    add(all, MODERATOR_TEST, vary.limits().tests());
    add(all, ROBUST_VARIANCE, vary.limits().robust());
    all.addAll(ofRows);
    return new MultiverseChoices(all);
  }

  private static void add(List<Choice> all, String name, List<String> levels) {
    if (!levels.isEmpty()) {
      all.add(new Choice(name, levels));
    }
  }

  /** No level of any choice. */
  Settings none() {
    return Settings.none(all.size());
  }

  /** The settings with a level of a choice; unchanged if there is no such choice or level. */
  Settings with(Settings settings, String choice, String level) {
    for (int i = 0; i < all.size(); i++) {
      if (all.get(i).name().equals(choice)) {
        int at = all.get(i).levels().indexOf(level);
        return at < 0 ? settings : settings.with(i, at);
      }
    }
    return settings;
  }

  /** The levels of a choice; an empty text alone where there is no such choice. */
  List<String> levels(String choice) {
    int place = place(choice);
    return place < 0 ? List.of("") : all.get(place).levels();
  }

  /** The place of a choice, or -1. */
  int place(String choice) {
    return all.stream().map(Choice::name).toList().indexOf(choice);
  }

  /** Choice to level, without those that have no meaning. */
  Map<String, String> told(Settings settings) {
    Map<String, String> told = new LinkedHashMap<>();
    for (int i = 0; i < all.size(); i++) {
      if (settings.level(i) != Settings.NONE) {
        told.put(all.get(i).name(), all.get(i).levels().get(settings.level(i)));
      }
    }
    return told;
  }
}
