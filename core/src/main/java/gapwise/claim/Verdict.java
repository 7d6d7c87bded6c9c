package gapwise.claim;

import gapwise.answer.Answer;
import gapwise.answer.ComparisonAlert;
import gapwise.answer.Told;
import java.util.List;
import java.util.Optional;

/** What came of looking at a claim. */
public sealed interface Verdict {

  /**
   * Another claim, which can be examined.
   *
   * @param words what it takes
   * @param name the part of the claim that changes: {@code outcome}, {@code clock}, {@code
   *     definition}
   * @param value its code or words
   */
  record Offer(String words, String name, String value) {}

  /**
   * The claim compares what cannot be compared, or nothing is recorded.
   *
   * @param code stable kebab-case word
   * @param reason for people
   * @param offers what could be asked instead
   */
  record Refused(String code, String reason, List<Offer> offers) implements Verdict {
    public Refused {
      offers = List.copyOf(offers);
    }
  }

  /**
   * The claim was examined.
   *
   * @param claim the claim
   * @param sentence what may honestly be said today
   * @param direct studies that hold both methods
   * @param indirect through a third method
   * @param separate each method by itself, in words
   * @param notPooled how many series could not be pooled; empty where all could
   * @param rows the series behind these, with the plan
   * @param alert what differs between the patients of both
   * @param adjusted series set against each other, without and with allowance for what differs
   * @param definitions how the series define the outcome, where that differs
   * @param offers definitions that both sides share
   * @param lowers what lowers certainty
   */
  record Examined(
      Claim claim,
      String sentence,
      Part direct,
      Part indirect,
      List<Told> separate,
      Optional<String> notPooled,
      Answer rows,
      Optional<ComparisonAlert> alert,
      List<Part> adjusted,
      List<String> definitions,
      List<Offer> offers,
      List<String> lowers)
      implements Verdict {
    public Examined {
      separate = List.copyOf(separate);
      adjusted = List.copyOf(adjusted);
      definitions = List.copyOf(definitions);
      offers = List.copyOf(offers);
      lowers = List.copyOf(lowers);
    }
  }
}
