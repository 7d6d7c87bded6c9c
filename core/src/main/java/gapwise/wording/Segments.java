package gapwise.wording;

import static gapwise.sentence.Sentences.say;

import java.util.Map;
import java.util.stream.Collectors;

/**
 * AO/OTA bone segments by name: first digit the bone, second the end or shaft (Fracture and
 * Dislocation Classification Compendium, J Orthop Trauma 2018;32 Suppl 1; from memory).
 */
public final class Segments {
  /** Names with their codes behind them. */
  private static final Map<String, String> NAMES =
      Map.of(
              "31", "femur, near the hip",
              "32", "femur, shaft",
              "33", "femur, near the knee",
              "41", "tibia, near the knee",
              "42", "tibia, shaft",
              "43", "tibia, near the ankle",
              "44", "ankle")
          .entrySet()
          .stream()
          .collect(
              Collectors.toUnmodifiableMap(
                  Map.Entry::getKey,
                  one ->
                      say(
                          "wording.segment",
                          Map.of("name", one.getValue(), "code", one.getKey()))));

  private Segments() {}

  /** Name and code, such as "tibia, shaft (42)"; the code alone where it has no name here. */
  public static String name(String code) {
    return NAMES.getOrDefault(code, code);
  }
}
