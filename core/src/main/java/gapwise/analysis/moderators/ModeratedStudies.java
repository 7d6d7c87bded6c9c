package gapwise.analysis.moderators;

import gapwise.analysis.pooling.Studies;
import gapwise.analysis.pooling.Synthesis;
import gapwise.analysis.result.Result;
import gapwise.effect.BackTransform;
import gapwise.effect.StudyData;
import java.util.List;

/**
 * The studies of a plan with moderators, whatever is fitted to them.
 *
 * @param synthesis the whole
 * @param asked by the plan
 * @param design what the moderators make of the studies
 */
record ModeratedStudies<D extends StudyData>(
    Synthesis<D> synthesis, AskedRegression asked, ModeratorDesign design) {

  /** Holds what is asked against the data; a warning tells of each study with a blank. */
  static <D extends StudyData> ModeratedStudies<D> of(
      Synthesis<D> synthesis, AskedRegression asked, List<Result.Warning> warnings) {
    ModeratorDesign design =
        ModeratorDesign.of(
            asked.moderators(), synthesis.table(), synthesis.studies().pooled(), warnings);
    ModeratorCautions.add(design.design(), warnings);
    return new ModeratedStudies<>(synthesis, asked, design);
  }

  /** The studies that enter. */
  List<Studies.Entry<D>> entries() {
    List<Studies.Entry<D>> pooled = synthesis.studies().pooled();
    return design.places().stream().map(pooled::get).toList();
  }

  /** What they report. */
  List<D> data() {
    return entries().stream().map(entry -> entry.data().orElseThrow()).toList();
  }

  /** How values of the moderators lie in these studies. */
  ModeratorValues values() {
    return new ModeratorValues(
        design.moderators(), entries().stream().map(Studies.Entry::row).toList());
  }

  /** From the analysis scale to what people read. */
  BackTransform back() {
    return synthesis.measure().shown(data());
  }
}
