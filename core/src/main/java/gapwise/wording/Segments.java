package gapwise.wording;

import static gapwise.sentence.Sentences.say;

import java.util.Map;

/**
 * AO/OTA bone segments by name: first digit the bone, second the end or shaft (Fracture and
 * Dislocation Classification Compendium, J Orthop Trauma 2018;32 Suppl 1; from memory).
 */
public final class Segments {
  private static final Map<String, String> NAMES =
      Map.of(
          "31", "femur, near the hip",
          "32", "femur, shaft",
          "33", "femur, near the knee",
          "41", "tibia, near the knee",
          "42", "tibia, shaft",
          "43", "tibia, near the ankle",
          "44", "ankle");

  private Segments() {}

  /** Name and code, such as "tibia, shaft (42)"; the code alone where it has no name here. */
  public static String name(String code) {
    String name = NAMES.get(code);
    return name == null ? code : say("wording.segment", Map.of("name", name, "code", code));
  }
}
