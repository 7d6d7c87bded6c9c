package gapwise.server.page.option;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.certainty.Certainty;
import gapwise.decision.certainty.Lowering;
import gapwise.decision.certainty.Settled;
import gapwise.decision.option.Cell;
import gapwise.decision.option.Column;
import gapwise.decision.option.Option;
import gapwise.evidence.vocabulary.Method;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;

/**
 * What lowers one number.
 *
 * @param outcome what it is of
 * @param method after what
 * @param certainty as proposed and as settled
 * @param key of the judgement
 * @param judge where a person confirms or changes it
 */
public record JudgedOutcome(
    String outcome, Method method, Certainty certainty, String key, String judge) {

  /** All domains, with what each takes. */
  public List<Lowering> lowerings() {
    return certainty.rating().lowerings();
  }

  /** The version of the judgement that is shown, 0 for none. */
  public int version() {
    return certainty.settled().map(Settled::version).orElse(0);
  }

  /** Who settled it and when, or that it is to be looked at again; empty where nobody did. */
  public String settledBy() {
    return certainty
        .settled()
        .map(
            one ->
                say(
                    certainty.isOutdated() ? "decision.settled-before" : "decision.settled",
                    Map.of(
                        "who",
                        one.who(),
                        "when",
                        LocalDate.ofInstant(one.when(), ZoneOffset.UTC).toString(),
                        "reason",
                        one.judgement().reason())))
        .orElse("");
  }

  static JudgedOutcome of(Column column, Option option, Cell.Known known, Address address) {
    return new JudgedOutcome(
        column.aspect().label(),
        option.method(),
        known.certainty(),
        known.number().key(),
        address
            .with(JudgementPage.JUDGED, option.method().code() + '.' + column.aspect().code())
            .at(PagePaths.COMPARE_JUDGEMENT));
  }
}
