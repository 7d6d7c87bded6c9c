package gapwise.demonstration;

import gapwise.evidence.Appraisal;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Day;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Instrument;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Risk;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What two invented reviewers judged of an invented study. Some items follow from the record, such
 * as consecutive patients; the rest is drawn. Case reports, abstracts and every third series are
 * left unjudged, so that pages show what is not rated.
 */
final class Judgements {
  private static final String INVENTED = "Invented for demonstration: ";

  private final Study study;
  private final Draw chance;

  private Judgements(Study study, Draw chance) {
    this.study = study;
    this.chance = chance;
  }

  /** The appraisals of a study; none for those that nobody judged. */
  static List<Appraisal> of(StudyPlan plan, Study study, Draw chance) {
    Judgements judged = new Judgements(study, chance);
    return switch (plan.design()) {
      case CASE_REPORT -> List.of();
      case RANDOMISED ->
          List.of(judged.domains("rob-2", "primary-union"), judged.domains("rob-2", "refracture"));
      case PROSPECTIVE_COMPARATIVE -> List.of(judged.counted("newcastle-ottawa", true));
      case RETROSPECTIVE_COMPARATIVE -> judged.comparison(plan);
      default -> judged.series(plan);
    };
  }

  private List<Appraisal> comparison(StudyPlan plan) {
    return plan.number() % 2 == 0
        ? List.of(domains("robins-i", "primary-union"), domains("robins-i", "refracture"))
        : List.of(counted("minors", true), domains("robins-i", "primary-union"));
  }

  private List<Appraisal> series(StudyPlan plan) {
    if (plan.number() % 3 == 0 || plan.abstractOf().isPresent()) {
      return List.of();
    }
    return switch (plan.number() % 4) {
      case 1 -> List.of(counted("jbi-case-series", false));
      case 3 -> List.of(counted("newcastle-ottawa", false));
      default -> List.of(counted("minors", false));
    };
  }

  /** An instrument with domains; the worst drawn, the others no worse. */
  private Appraisal domains(String instrument, String outcome) {
    Instrument by = Instrument.of(instrument);
    List<Appraisal.Answer> answers = new ArrayList<>();
    for (Instrument.Item item : by.items()) {
      List<Instrument.Judgement> allowed = by.allowed(item);
      int worst = item.code().equals("confounding") ? allowed.size() - 1 : 1;
      int least = item.code().equals("confounding") ? allowed.size() - 2 : 0;
      Instrument.Judgement judged = allowed.get(chance.whole(least, worst));
      answers.add(answer(item, judged));
    }
    return made(by, Optional.of(Outcome.of(outcome)), answers, Optional.empty());
  }

  /** An instrument whose items are counted or ticked, with the reviewers' own word over all. */
  private Appraisal counted(String instrument, boolean compared) {
    Instrument by = Instrument.of(instrument);
    List<Appraisal.Answer> answers = new ArrayList<>();
    for (Instrument.Item item : by.items()) {
      if (compared || !item.comparative()) {
        answers.add(answer(item, judged(by, item)));
      }
    }
    boolean settled = chance.chance(0.85);
    return made(by, Optional.empty(), answers, settled ? Optional.of(risk()) : Optional.empty());
  }

  private Risk risk() {
    double part = chance.uniform(0, 1);
    if (part < 0.2) {
      return Risk.LOW;
    }
    if (part < 0.6) {
      return Risk.SOME;
    }
    return part < 0.88 ? Risk.SERIOUS : Risk.CRITICAL;
  }

  private Instrument.Judgement judged(Instrument by, Instrument.Item item) {
    List<Instrument.Judgement> allowed =
        by.allowed(item).stream().filter(one -> !one.notAsked()).toList();
    Instrument.Judgement best = allowed.get(0);
    Instrument.Judgement worst = allowed.get(allowed.size() - 1);
    return switch (item.code()) {
      case "consecutive" ->
          study.consecutive().equals(Optional.of(YesOrNo.YES)) ? best : allowed.get(1);
      case "unbiased-reading", "outcome-read" ->
          study.assessorIndependent().equals(Optional.of(YesOrNo.YES)) ? best : worst;
      case "prospective" ->
          study.design().filter(Judgements::isProspective).isPresent() ? best : worst;
      case "size-planned" -> worst;
      default -> chance.chance(0.65) ? best : chance.oneOf(allowed);
    };
  }

  private static boolean isProspective(Design design) {
    return design == Design.PROSPECTIVE_SERIES || design == Design.PROSPECTIVE_COMPARATIVE;
  }

  private Appraisal.Answer answer(Instrument.Item item, Instrument.Judgement judged) {
    return new Appraisal.Answer(
        item.code(),
        judged.code(),
        Optional.of(INVENTED + item.label() + ", " + judged.label()),
        Optional.of("p. " + chance.whole(2, 9)));
  }

  private Appraisal made(
      Instrument by,
      Optional<Outcome> outcome,
      List<Appraisal.Answer> answers,
      Optional<Risk> overall) {
    return new Appraisal(
        by,
        by.version(),
        outcome,
        Optional.empty(),
        answers,
        overall.map(
            risk ->
                new Appraisal.Overall(
                    risk.code(),
                    Optional.of(INVENTED + "settled between two reviewers"),
                    Optional.empty())),
        List.of("XA", "XB"),
        Day.parse("2026-05-" + chance.whole(10, 28)));
  }
}
