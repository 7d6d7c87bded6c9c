package gapwise.decision.situation;

import gapwise.evidence.vocabulary.Coded;
import java.util.Set;

/** What of a patient a group of patients is held against. */
public enum Attribute implements Coded {
  LENGTH("missing bone"),
  BONE("bone"),
  SEGMENT("part of the bone"),
  INFECTION("infection"),
  SOFT_TISSUE("soft tissue"),
  AGE("adults or children"),
  SMOKING("smoking"),
  DIABETES("diabetes");

  /**
   * By the worst of these a group counts as inside, at the edge, outside or unknown (common
   * practice, no source: length and infection go with the choice of method and with what comes of
   * it, and the tibia becomes infected more often than the femur).
   */
  public static final Set<Attribute> MATTERING = Set.of(LENGTH, BONE, INFECTION);

  private final String label;

  Attribute(String label) {
    this.label = label;
  }

  @Override
  public String code() {
    return Coded.codeOf(this);
  }

  @Override
  public String label() {
    return label;
  }
}
