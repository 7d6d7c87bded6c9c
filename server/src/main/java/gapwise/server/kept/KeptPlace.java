package gapwise.server.kept;

import gapwise.server.address.Address;
import gapwise.server.address.ClaimAddress;
import gapwise.server.address.OptionAddress;
import gapwise.server.address.PagePaths;
import gapwise.server.address.QuestionAddress;
import gapwise.server.address.SheetAddress;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The pages whose question can be kept. */
public enum KeptPlace {
  POOLED(PagePaths.POOLED, "Pooled"),
  BY_SIZE(PagePaths.BY_SIZE, "By size"),
  OVER_TIME(PagePaths.OVER_TIME, "Over time"),
  COMPARE(PagePaths.COMPARE, "Side by side"),
  SHEET(PagePaths.SHEET, "Sheet"),
  CLAIM(PagePaths.CLAIM, "Claim");

  /** The name that says from which kept question a page was opened. */
  public static final String KEPT = "kept";

  /** What an address has beside its question: how it was opened, shown or printed. */
  private static final List<String> BESIDE =
      List.of(KEPT, "whole", "ways", "through", "page", SheetAddress.MADE, SheetAddress.PAPER);

  private final String path;
  private final String label;

  KeptPlace(String path, String label) {
    this.path = path;
    this.label = label;
  }

  /** Path of the page. */
  public String path() {
    return path;
  }

  /** Its name. */
  public String label() {
    return label;
  }

  /** The page of a path. */
  public static Optional<KeptPlace> find(String path) {
    return Arrays.stream(values()).filter(one -> one.path.equals(path)).findFirst();
  }

  /** The question of an address alone. */
  public static Address question(Address address) {
    return address.without(BESIDE);
  }

  /**
   * Whether an address asks this page a question that has an answer.
   *
   * @throws gapwise.problem.WrongInputException with what is wrong in it
   */
  public boolean asks(Address address) {
    return switch (this) {
      case POOLED, BY_SIZE, OVER_TIME -> QuestionAddress.question(address).isPresent();
      case COMPARE, SHEET -> OptionAddress.asks(address);
      case CLAIM -> ClaimAddress.claim(address).isPresent();
    };
  }
}
