package gapwise.server.page.desk;

import gapwise.desk.CurveIntoDraft;
import gapwise.desk.DraftCurve;
import gapwise.desk.KeptDraft;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.server.address.PageBoxes;
import gapwise.server.address.PagePaths;
import java.util.List;
import java.util.Optional;

/**
 * A curve of a draft.
 *
 * @param block its number in the draft
 * @param title its group and the time that it shows
 * @param curve what stands in the draft
 * @param marks address at which its marks on the picture are mended; empty where none were kept
 * @param beside address at which another curve of the same figure is read; empty likewise
 * @param place address of its figure; empty where that was not kept
 */
public record CurveLine(
    int block,
    String title,
    DraftCurve curve,
    Optional<String> marks,
    Optional<String> beside,
    Optional<String> place) {
  static List<CurveLine> in(KeptDraft kept) {
    return CurveIntoDraft.in(kept.draft()).stream().map(curve -> of(kept.id(), curve)).toList();
  }

  private static CurveLine of(String draft, DraftCurve curve) {
    String outcome =
        Outcome.vocabulary().find(curve.outcome()).map(Outcome::label).orElse(curve.outcome());
    return new CurveLine(
        curve.block(),
        curve.arm() + ": " + outcome,
        curve,
        address(draft, curve, "curve"),
        address(draft, curve, "beside"),
        curve.reading().map(PageBoxes::at));
  }

  private static Optional<String> address(String draft, DraftCurve curve, String how) {
    return curve
        .marks()
        .map(any -> PagePaths.DESK + "/" + draft + "/figure?" + how + "=" + curve.block());
  }
}
