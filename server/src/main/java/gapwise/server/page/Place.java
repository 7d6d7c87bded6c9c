package gapwise.server.page;

import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.CarriedQuestion;
import gapwise.server.address.PagePaths;
import java.util.Optional;

/**
 * The pages, each behind its door; those of one door in the order of the second line. The first
 * page, which the name of the tool leads to, and errors stand behind none.
 */
public enum Place {
  FIRST(Optional.empty(), ""),
  COMPARE(Optional.of(Door.COMPARE), "Side by side"),
  POOLED(Optional.of(Door.COMPARE), "Pooled"),
  BY_SIZE(Optional.of(Door.COMPARE), "By size"),
  FUNNEL(Optional.of(Door.COMPARE), "Small against large"),
  OVER_TIME(Optional.of(Door.COMPARE), "Over time"),
  STUDIES(Optional.of(Door.STUDIES), "List"),
  SIZES(Optional.of(Door.GAPS), "Map by missing bone"),
  COMPARISONS(Optional.of(Door.GAPS), "Comparisons"),
  CLAIM(Optional.of(Door.CASE_AND_CLAIM), "Check a claim"),
  CASE(Optional.of(Door.CASE_AND_CLAIM), "Place a case"),
  DESK(Optional.of(Door.ADD), "The desk"),
  ADD(Optional.of(Door.ADD), "Templates"),
  OVERLAPS(Optional.of(Door.ADD), "Shared patients"),
  REFERENCES(Optional.of(Door.ADD), "References"),
  SCREENING(Optional.of(Door.ADD), "Screening"),
  EXTRACTION(Optional.of(Door.ADD), "Extraction"),
  REVIEW(Optional.of(Door.ADD), "Review"),
  KEPT(Optional.of(Door.ADD), "Kept questions"),
  METHOD(Optional.of(Door.METHOD), "How it is worked out"),
  NONE(Optional.empty(), "");

  private final Optional<Door> door;
  private final String label;

  Place(Optional<Door> door, String label) {
    this.door = door;
    this.label = label;
  }

  /** The door it stands behind; empty for the first page and for errors. */
  public Optional<Door> door() {
    return door;
  }

  /** Its name in the second line. */
  public String label() {
    return label;
  }

  /** Whether the second line names it on other pages too; questions of times lead to the other. */
  boolean isAlwaysNamed() {
    return this != OVER_TIME;
  }

  /** What its first page asks for. */
  Right right() {
    return switch (this) {
      case DESK, ADD, REFERENCES -> Right.EXTRACT;
      case OVERLAPS -> Right.SETTLE;
      default -> Right.SEE;
    };
  }

  /** The question that an address of this page asks. */
  CarriedQuestion asked(Address address) {
    return switch (this) {
      case CLAIM -> CarriedQuestion.ofClaim(address);
      case CASE, DESK, EXTRACTION, FIRST, KEPT, NONE, OVERLAPS, REFERENCES, REVIEW, SCREENING ->
          CarriedQuestion.NONE;
      default -> CarriedQuestion.of(address);
    };
  }

  /** Address of this page with a question carried to it. */
  String href(CarriedQuestion question) {
    return switch (this) {
      case FIRST, NONE -> PagePaths.EVIDENCE;
      case COMPARE -> question.atCompare();
      case POOLED -> question.at(PagePaths.POOLED);
      case BY_SIZE -> question.at(PagePaths.BY_SIZE);
      case FUNNEL -> question.at(PagePaths.FUNNEL);
      case OVER_TIME -> question.at(PagePaths.OVER_TIME);
      case STUDIES -> question.at(PagePaths.STUDIES);
      case SIZES -> question.at(PagePaths.MAP);
      case COMPARISONS ->
          new CarriedQuestion(question.address().with("view", "comparisons")).at(PagePaths.MAP);
      case CASE -> question.atCase();
      case CLAIM -> question.atClaim();
      case DESK -> PagePaths.DESK;
      case OVERLAPS -> PagePaths.OVERLAPS;
      case REFERENCES -> PagePaths.REFERENCES;
      case SCREENING -> PagePaths.SCREENING;
      case REVIEW -> PagePaths.REVIEW;
      case KEPT -> PagePaths.KEPT;
      case EXTRACTION -> PagePaths.EXTRACTION;
      case ADD -> question.at(PagePaths.IMPORT);
      case METHOD -> question.at(PagePaths.METHOD);
    };
  }
}
