package gapwise.analysis.multiverse;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.moderators.NamedSum;
import gapwise.analysis.pooling.RepeatedStudies;
import gapwise.analysis.pooling.Studies;
import gapwise.analysis.pooling.StudyTable;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.effect.Measure;
import gapwise.effect.StudyData;
import gapwise.synthesis.multiverse.Approach;
import gapwise.synthesis.multiverse.FoundApproach;
import gapwise.synthesis.multiverse.Multiverse;
import gapwise.synthesis.multiverse.Subset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The task {@code multiverse}: rows to subsets, choices to approaches, all of them to one result.
 */
final class MultiverseRun {
  private MultiverseRun() {}

  static <D extends StudyData> Result of(MultiversePlan plan, Measure<D> measure, DataTable table) {
    Studies<D> studies = Studies.read(plan.base(), measure, table);
    MultiverseRows rows = MultiverseRows.of(plan.vary(), studies, table);
    boolean lacksSpread = lacksSpread(studies);
    MultiverseChoices choices = MultiverseChoices.of(plan.vary(), lacksSpread, rows.choices());
    List<Result.Warning> ofModerators = new ArrayList<>();
    Optional<NamedSum> sum =
        plan.moderated()
            .map(one -> NamedSum.of(one.asked(), one.about(), studies, table, ofModerators));
    List<Approach> approaches =
        new MultiverseApproaches<>(plan, choices, studies, table, sum).all(rows::refuseTooManyWays);
    rows.refuseTooMany(
        approaches.stream().mapToInt(approach -> approach.ways().size()).sum(),
        approaches.stream().filter(FoundApproach.class::isInstance).count());
    List<Subset> subsets = rows.subsets(choices);
    Multiverse multiverse =
        Multiverse.of(choices.all(), choices.place(MultiverseChoices.MODEL), approaches, subsets);
    List<Result.Warning> warnings = new ArrayList<>(table.warnings());
    warnings.addAll(plan.unused());
    warnings.addAll(studies.warnings());
    warnings.addAll(ofModerators);
    warnings.addAll(RepeatedStudies.warnings(studies));
    warnings.addAll(rows.warnings());
    if (!lacksSpread && plan.vary().missingSpread().equals(List.of(MultiverseChoices.BORROW))) {
      warnings.add(
          Result.Warning.of(
              "setting-not-used",
              say("analysis.setting-not-used", Map.of("field", "vary.missingSpread"))));
    }
    return new Result(
        plan.head().json(),
        StudyTable.data(studies, table),
        MultiverseSummary.of(multiverse, choices, plan, sum),
        warnings);
  }

  private static <D extends StudyData> boolean lacksSpread(Studies<D> studies) {
    return studies.all().stream()
        .flatMap(entry -> entry.effect().stream())
        .flatMap(effect -> effect.leftOut().stream())
        .anyMatch(why -> why.code().equals("missing-standard-deviation"));
  }
}
