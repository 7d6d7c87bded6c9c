package gapwise.server.address;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * The question of a page as it goes along to other pages: outcome, methods, length of missing bone,
 * bone, infection, follow-up, definition and whatever else narrows it. What only one page has, such
 * as the order of its list, stays there.
 *
 * @param address the question in the names that {@link QuestionAddress} and {@link Filters} read
 */
public record CarriedQuestion(Address address) {
  /** No question, so that every page starts empty. */
  public static final CarriedQuestion NONE = new CarriedQuestion(new Address(Map.of()));

  private static final List<String> NAMES = names();

  /** What a claim says in its own names, or has no choice of. */
  private static final List<String> NOT_OF_CLAIMS =
      List.of(
          "method",
          "outcome",
          QuestionAddress.CONVERSIONS,
          QuestionAddress.COUNTED,
          QuestionAddress.OVERLAP,
          QuestionAddress.SPLIT);

  /** What a case has in common with a question, under the same name. */
  private static final List<String> OF_CASE = List.of("method", "bone", "segment");

  public CarriedQuestion {
    Objects.requireNonNull(address, "address");
  }

  private static List<String> names() {
    List<String> names = new ArrayList<>(Filters.NAMES);
    names.addAll(QuestionAddress.OWN_NAMES);
    return List.copyOf(names);
  }

  /** The question of a page that reads the names of a question. */
  public static CarriedQuestion of(Address page) {
    Map<String, List<String>> kept = new LinkedHashMap<>();
    for (String name : NAMES) {
      if (!page.all(name).isEmpty()) {
        kept.put(name, page.all(name));
      }
    }
    return new CarriedQuestion(new Address(kept));
  }

  /** The question about both methods of a claim; that they were set against each other is left. */
  public static CarriedQuestion ofClaim(Address claim) {
    Address question = claim.without(List.of("method"));
    for (String side : List.of("a", "b")) {
      question = question.and("method", claim.first(side));
    }
    return of(question);
  }

  /** Address of a page that reads the names of a question. */
  public String at(String path) {
    return address.at(path);
  }

  /**
   * Address of the options for what it says of a patient, of methods and of what narrows them; the
   * rest goes along.
   */
  public String atCompare() {
    return address.without(List.of("match")).at(PagePaths.COMPARE);
  }

  /**
   * Address of the claim that its first method gives more of its outcome than its second; with one
   * method or none the rest of the claim is still to be chosen.
   */
  public String atClaim() {
    List<String> methods = address.all("method");
    Address claim = address.without(NOT_OF_CLAIMS);
    claim = claim.with("outcome", Filters.outcome(address).map(one -> one.code()).orElse(""));
    claim = claim.with("a", methods.isEmpty() ? "" : methods.get(0));
    return claim.with("b", methods.size() < 2 ? "" : methods.get(1)).at(PagePaths.CLAIM);
  }

  /**
   * Address of a case with what the question says of one patient: each thing it names once. Nothing
   * goes the other way: a case stands in the address of its own page only.
   */
  public String atCase() {
    Address patient = NONE.address();
    for (String name : OF_CASE) {
      patient = patient.with(name, address.all(name).size() == 1 ? address.first(name) : "");
    }
    boolean oneLength = address.first("from").equals(address.first("to"));
    return patient.with("length", oneLength ? address.first("from") : "").at(PagePaths.CASE);
  }
}
