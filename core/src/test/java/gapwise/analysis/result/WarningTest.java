package gapwise.analysis.result;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** A warning among sentences. */
class WarningTest {
  @Test
  void aMessageStandsAmongSentencesWithACapitalAndOneFullStop() {
    assertEquals(
        "No study is left to be pooled.",
        Result.Warning.of("no-studies", "no study is left to be pooled").sentence());
    assertEquals(
        "Studies count from several events.",
        Result.Warning.of("clock-chosen", "Studies count from several events.").sentence());
  }
}
