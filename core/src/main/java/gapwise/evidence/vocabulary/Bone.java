package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** The bone that has lost length, or the joint where papers name no bone. */
public enum Bone implements Coded {
  FEMUR("femur"),
  TIBIA("tibia"),
  FIBULA("fibula"),
  FOOT("foot"),
  ANKLE("ankle"),
  KNEE("knee"),
  LOWER_LIMB("lower limb, bone not said");

  private final String label;

  Bone(String label) {
    this.label = label;
  }

  @Override
  @JsonValue
  public String code() {
    return Coded.codeOf(this);
  }

  @Override
  public String label() {
    return label;
  }

  @JsonCreator
  static Bone ofCode(String code) {
    return Coded.parse(Bone.class, code)
        .orElseThrow(() -> new IllegalArgumentException("unknown code '" + code + "'"));
  }
}
