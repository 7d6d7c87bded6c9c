package gapwise.printed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers in words; what they stand for is plain English. */
class NumeralsTest {
  private static final Pattern PATIENTS = Pattern.compile(Numerals.COUNT + " patients");

  @ParameterizedTest
  @CsvSource({
    "Twelve patients were treated., 12",
    "We saw twenty-four patients., 24",
    "We saw thirty two patients., 32",
    "Seventeen patients came back., 17",
    "of 40 patients, 40",
    "Ninety patients, 90"
  })
  void aCountIsReadFromDigitsAndWords(String sentence, int count) {
    Matcher found = PATIENTS.matcher(sentence);
    assertTrue(found.find(), sentence);
    assertEquals(OptionalInt.of(count), Numerals.count(found.group(1)));
  }

  /** A part of a larger or broken number is none. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "One hundred and four patients",
        "two hundred four patients",
        "3.5 patients",
        "1,240 patients",
        "someone patients"
      })
  void aPartOfALargerNumberIsNone(String sentence) {
    assertFalse(PATIENTS.matcher(sentence).find(), sentence);
  }

  @Test
  void romanNumeralsReachThirtyNine() {
    assertEquals(OptionalInt.of(39), Numerals.roman("xxxix"));
    assertEquals(OptionalInt.of(4), Numerals.roman("iv"));
    assertEquals(OptionalInt.empty(), Numerals.roman("mix"));
    assertEquals(OptionalInt.empty(), Numerals.roman(""));
  }
}
