package gapwise.search.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.OutcomeFamily;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PlainWordsTest {
  private static String told(String typed) {
    Understood understood = PlainWords.read(typed);
    List<String> parts = new ArrayList<>();
    for (Reading reading : understood.readings()) {
      if (reading instanceof Reading.Coded coded) {
        parts.add(coded.kind().word() + "=" + String.join("+", coded.codes()));
      } else if (reading instanceof Reading.Size size) {
        parts.add("cm=" + size.range().fromCentimetres() + ".." + size.range().toCentimetres());
      } else if (reading instanceof Reading.Years years) {
        parts.add("years=" + years.from() + ".." + years.to());
      } else if (reading instanceof Reading.FollowUp followUp) {
        parts.add("months=" + followUp.months());
      }
    }
    parts.add("rest=" + understood.rest());
    return String.join("; ", parts)
        .replace("OptionalInt[", "")
        .replace("]", "")
        .replace("OptionalInt.empty", "");
  }

  @Test
  void methodsOutcomesSizesBonesAndFlagsAreReadFromOneLine() {
    assertEquals(
        "outcome=union; method=bone-transport; cm=5.0..8.0; infected=yes; segment=43; rest=",
        told("union bone transport 5-8 cm infected distal tibia"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "weight bearing 5-8 cm|Weight bearing",
        "infection after membrane|Infection",
        "function and satisfaction|Function and satisfaction"
      })
  void theNameOfAFamilyOfOutcomesMeansAnyOfThem(String typed, String family) {
    List<String> codes =
        PlainWords.read(typed).readings().stream()
            .filter(Reading.Coded.class::isInstance)
            .map(Reading.Coded.class::cast)
            .filter(coded -> coded.kind() == Reading.Kind.OUTCOME)
            .flatMap(coded -> coded.codes().stream())
            .toList();
    assertEquals(
        Outcome.vocabulary().all().stream()
            .filter(outcome -> outcome.family().equals(family))
            .map(Outcome::code)
            .toList(),
        codes);
    assertEquals(family, OutcomeFamily.exactly(codes).orElseThrow().name());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "5 to 8 cm|5.0..8.0",
        "between 5 and 8 cm|5.0..8.0",
        "5\u20138cm|5.0..8.0",
        "50-80 mm|5.0..8.0",
        "5 cm to 8 cm|5.0..8.0",
        "8-5 cm|5.0..8.0",
        "5,5-8 centimetres|5.5..8.0",
        "over 8 cm|8.0..Infinity",
        ">8 cm defect|8.0..Infinity",
        "at least 8 cm|8.0..Infinity",
        "8 cm or more|8.0..Infinity",
        "8 cm+|8.0..Infinity",
        "under 40 mm|0.0..4.0",
        "up to 4 centimeters|0.0..4.0",
        "6 cm gap|6.0..6.0",
        "6cm|6.0..6.0"
      })
  void lengthsAreReadWithTheirUnit(String typed, String range) {
    assertEquals("cm=" + range + "; rest=", told(typed));
  }

  @ParameterizedTest
  @ValueSource(strings = {"multi-level transport", "multilevel transport", "multifocal transport"})
  void severalLevelsAreADetailOfTheMethodBesideIt(String typed) {
    assertEquals(
        "detail=transport-levels:trifocal+transport-levels:more-than-two; method=bone-transport;"
            + " rest=",
        told(typed));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "since 2015|2015..",
        "after 2015|2016..",
        "before 2010|..2009",
        "2010-2020|2010..2020",
        "from 2010 to 2020|2010..2020"
      })
  void yearsOfPublicationAreRead(String typed, String years) {
    assertEquals("years=" + years + "; rest=", told(typed));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "follow-up over 24 months|24.0",
        "followed for at least 2 years|24.0",
        "24 months follow-up|24.0",
        "24 months' follow up|24.0",
        "at least 12 months follow-up|12.0",
        "2-year follow-up|24.0",
        "2.5 years or more followup|30.0",
        ">= 18 mo fu|18.0",
        "mean follow-up 36 months|36.0",
        "minimum follow-up of 12 months|12.0"
      })
  void leastFollowUpIsReadWithItsUnit(String typed, String months) {
    assertEquals("months=" + months + "; rest=", told(typed));
  }

  /** What a follow-up must stay below, or lie between, is no filter here and stays text. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "under 12 months follow-up",
        "follow-up under 12 months",
        "follow-up < 12 months",
        "<= 12 months follow-up",
        "12-24 months follow-up",
        "12\u201324 months follow-up",
        "follow-up no more than 12 months",
        "no more than 12 months follow-up",
        "maximum follow-up 12 months",
        "within 24 months follow-up",
        "follow-up",
        "12 months",
        "9000 months follow-up"
      })
  void otherTimesStayText(String typed) {
    assertEquals("rest=" + typed, told(typed));
  }

  /** The same where joining words are set aside. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "12 to 24 months follow-up|12 24 months follow-up",
        "follow-up 12 months to 24 months|follow-up 12 months 24 months",
        "follow-up 12 months or less|follow-up 12 months less",
        "lost to follow-up 12 months|lost follow-up 12 months"
      })
  void otherTimesWithJoiningWordsStayText(String typed, String rest) {
    assertEquals("rest=" + rest, told(typed));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "tibial shaft|segment=42",
        "distal femoral|segment=33",
        "femur|bone=femur",
        "not infected|infected=no",
        "vascularized fibula|method=vascularised-bone-flap",
        "Masquelet|method=induced-membrane",
        "time to full weight bearing|outcome=time-to-full-weight-bearing",
        "randomized|design=randomised",
        "case reports|design=case-report"
      })
  void wordsOfTheTradeAreReadInTheirUsualForms(String typed, String meaning) {
    assertEquals(meaning + "; rest=", told(typed));
  }

  @Test
  void wordsWithoutAMeaningAreLookedForAsTextAndNoneIsLost() {
    Understood understood = PlainWords.read("smokers with bone transport in Okafor 2019");
    assertEquals("smokers Okafor 2019", understood.rest());
    assertEquals(List.of("with", "in"), understood.aside());
  }

  @Test
  void quotedWordsAreAlwaysText() {
    assertEquals(
        "method=allograft; rest=\"bone transport\" 7", told("\"bone transport\" allograft 7"));
  }

  @Test
  void aLengthWithoutAUnitIsNotGuessed() {
    assertEquals("rest=5-8", told("5-8"));
  }

  @Test
  void everySpellingOfTheVocabulariesIsRead() {
    List<String> unread = new ArrayList<>();
    TreeSet<String> spellings = new TreeSet<>(Method.vocabulary().spellings().keySet());
    spellings.addAll(Outcome.vocabulary().spellings().keySet());
    for (String spelling : spellings) {
      Understood understood = PlainWords.read(spelling);
      if (understood.readings().size() != 1 || !understood.rest().isEmpty()) {
        unread.add(spelling + " -> " + understood);
      }
    }
    assertEquals(List.of(), unread);
  }

  /** Letters and digits typed come back in a reading, in the rest or aside, whatever is typed. */
  @Test
  void noLetterIsEverDropped() {
    Random random = new Random(20261125);
    String[] pieces = {
      "union",
      "5-8 cm",
      "\"",
      "infected",
      "not",
      "tibia",
      "distal",
      ">",
      "\u0001x",
      "of",
      "7",
      "cm",
      "zzz",
      "2010-2012",
      "followed 24 months",
      "follow-up",
      "\u00e9t\u00e9",
      "-",
      ",",
      "over",
      "bone",
      "transport",
      "'",
      "(",
      "\u20ac"
    };
    for (int run = 0; run < 3000; run++) {
      StringBuilder typed = new StringBuilder();
      for (int i = random.nextInt(9); i >= 0; i--) {
        typed.append(pieces[random.nextInt(pieces.length)]).append(random.nextBoolean() ? " " : "");
      }
      Understood understood = PlainWords.read(typed.toString());
      StringBuilder back = new StringBuilder(understood.rest());
      understood.aside().forEach(back::append);
      understood.readings().forEach(reading -> back.append(reading.typed()));
      assertEquals(letters(typed.toString()), letters(back.toString()), typed::toString);
    }
    assertTrue(PlainWords.read("").readings().isEmpty());
  }

  /**
   * Counted is how often a letter is looked at. Eight forms of words go through the text once, so
   * that a text four times as long needs four times the looks; with each amount looked for from the
   * start it needed sixteen times as many.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "tibia over 5 cm since 2010 ",
        "5 cm ",
        "5 to 8 cm ",
        "since 2010 ",
        "follow-up 12 months and ",
        "5",
        "a "
      })
  void theWorkOfFindingAmountsGrowsWithTheLengthOfTheText(String typed) {
    Looked shorter = new Looked(typed.repeat(500));
    Looked longer = new Looked(typed.repeat(2000));
    int amounts = Amounts.in(shorter).size();
    assertEquals(4 * amounts, Amounts.in(longer).size(), 4);
    assertTrue(
        longer.looks < 4.5 * shorter.looks, typed + ": " + shorter.looks + ", " + longer.looks);
  }

  /** A text that counts how often its letters are looked at. */
  private static final class Looked implements CharSequence {
    private final String text;
    private long looks;

    Looked(String text) {
      this.text = text;
    }

    @Override
    public int length() {
      return text.length();
    }

    @Override
    public char charAt(int index) {
      looks++;
      return text.charAt(index);
    }

    @Override
    public CharSequence subSequence(int start, int end) {
      return text.subSequence(start, end);
    }

    @Override
    public String toString() {
      return text;
    }
  }

  @Test
  void aLongTextIsReadToItsEnd() {
    String typed = "5 cm tibia since 2010 \"bone\" ".repeat(1000);
    Understood understood = PlainWords.read(typed);
    assertEquals(3000, understood.readings().size());
    assertEquals("\"bone\" ".repeat(1000).strip(), understood.rest());
  }

  @Test
  void anAmountBehindAFollowUpLeavesTheFollowUpToBeRead() {
    assertEquals("months=12.0; cm=5.0..5.0; rest=", told("follow-up 12 months and 5 cm"));
  }

  private static String letters(String text) {
    return text.codePoints()
        .filter(Character::isLetterOrDigit)
        .sorted()
        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
        .toString();
  }
}
