package gapwise.appraisal;

import gapwise.evidence.Appraisal;
import gapwise.evidence.vocabulary.Instrument;
import java.util.List;

/** Which items of its instrument an appraisal asks, and which of them it leaves open. */
final class Asked {
  private Asked() {}

  /**
   * Items about groups compared are asked once one of them is answered: a series has none to
   * compare, and is judged by the others alone.
   */
  static List<Instrument.Item> items(Appraisal appraisal) {
    List<Instrument.Item> all = appraisal.instrument().items();
    boolean compared =
        all.stream().anyMatch(item -> item.comparative() && appraisal.answer(item).isPresent());
    return all.stream().filter(item -> compared || !item.comparative()).toList();
  }

  static List<Instrument.Item> unanswered(Appraisal appraisal) {
    return items(appraisal).stream().filter(item -> appraisal.answer(item).isEmpty()).toList();
  }
}
