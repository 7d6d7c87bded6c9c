package gapwise.reference.likeness;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Titles, people, journals and pages invented here; no other source. */
class LikenessTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          Plates for the ulna | PLATES FOR THE ULNA. | EQUAL
          Foetal oedema and labour | Fetal edema and labor | EQUAL
          Re-fracture after nail removal | Refracture after nail removal | EQUAL
          Twenty-one knees with type IV loss | 21 knees with type 4 loss | EQUAL
          <i>α</i>-phase cement in sheep | alpha-phase cement in sheep | EQUAL
          &alpha;-phase cement in sheep | $\\alpha$-phase cement in sheep | EQUAL
          Localisation of the ﬂap | Localization of the flap | EQUAL
          Nails for the forearm of adults | Nails for hte forearm of adults | SLIPS
          Nails for the forearm of adults | Nails for the forarm of adults | SLIPS
          Nails for the fore arm of adults | Nails for the forearm of adults | EQUAL
          Nails for the forearm: a trial | Nails for the forearm | SUBTITLE_LEFT_OUT
          Nails for the forearm: a trial | Nails for the forearm - a trial | EQUAL
          Nails for the forearm: a trial | Nails for the forearm: ten years later | OTHER_SUBTITLE
          Nails for the forearm of growing children | Nails for the forearm of gro... | CUT
          Register of nails, year 2001 | Register of nails, year 2002 | SOME_WORDS_DIFFER
          Nails in the arm of adults. Part 1 | Nails in the arm of adults. Part 2 | OTHER_SUBTITLE
          Nails in adults (part I) | Nails in adults (part II) | SOME_WORDS_DIFFER
          Hypertrophic nonunion of the ulna | Hypotrophic nonunion of the ulna | SOME_WORDS_DIFFER
          Loss of the tibia in adults | Loss of the fibula in adults | SOME_WORDS_DIFFER
          Walking with a nail | Sleep in intensive care | DIFFERENT
          """)
  void titles(String one, String two, TitleLikeness.Kind expected) {
    assertEquals(expected, TitleLikeness.of(TitleWords.of(one), TitleWords.of(two)).kind());
    assertEquals(expected, TitleLikeness.of(TitleWords.of(two), TitleWords.of(one)).kind());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          Möllert, Anna | Moellert, A. | SPELLED_OTHERWISE
          Möllert, Anna | Mollert A | SAME
          van den Ostrum, Jan | Ostrum, Jan van den | SAME
          Straßkamp, Uwe | Strasskamp U | SAME
          Ørvik, Kai | Orvik K | SAME
          Kellberg, Hans-Peter | Kellberg HP | SAME
          Kellberg, Jr, Hans | Kellberg H | SAME
          Uwe, Kellberg | Kellberg, Uwe | EXCHANGED
          Uwe, Kellberg | Kellberg, U. | EXCHANGED
          Παπαδοκάκης, Νίκος | Papadokakis N | SAME
          Вымышлова, Анна | Vymyshlova A | SAME
          山空, 太郎 | Yamazora T | NOT_COMPARABLE
          Kellberg, Uwe | Kellberg, Anna | DIFFERENT
          Kellberg, Uwe | Kelberg, Uwe | SPELLED_OTHERWISE
          Kellberg, Uwe | Dornbach, Uwe | DIFFERENT
          """)
  void persons(String one, String two, PersonLikeness expected) {
    assertEquals(expected, PersonLikeness.of(PersonName.of(one), PersonName.of(two)));
    assertEquals(expected, PersonLikeness.of(PersonName.of(two), PersonName.of(one)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          Journal of Invented Bones | J Invent Bones | SAME
          The Journal of Invented Bones & Joints | Journal of Invented Bones and Joints | SAME
          Archives of Invented Bones (Nowhere) | Arch Invent Bones | SAME
          Journal of Invented Bones | Journal of Invented Joints | DIFFERENT
          Journal of Invented Bones |  '' | UNKNOWN
          """)
  void journals(String one, String two, JournalLikeness expected) {
    assertEquals(expected, JournalLikeness.of(one, two));
  }

  @ParameterizedTest
  @CsvSource({
    "123-8,123-128",
    "123–128,123-128",
    "S12-S19,s12-s19",
    "S12-9,s12-s19",
    "e1024,e1024",
    "1095-103,1095-1103",
    "pp. 7--9,7-9"
  })
  void pages(String printed, String expected) {
    assertEquals(expected, PageSpan.of(printed).orElseThrow().text());
  }

  @Test
  void aListCutShortIsOneTeam() {
    List<PersonName> all =
        List.of(
            PersonName.of("Orm A"),
            PersonName.of("Bel B"),
            PersonName.of("Cor C"),
            PersonName.of("Dun D"));
    PeopleLikeness cut = PeopleLikeness.of(all, all.subList(0, 1));
    assertTrue(cut.isOneTeam());
    assertFalse(cut.isNobody());
    assertTrue(PeopleLikeness.of(all, List.of(PersonName.of("Zan Z"))).isNobody());
    assertTrue(PeopleLikeness.of(all, List.of()).isUnknown());
  }

  @Test
  void countingSlipsNoFurtherThanNeededComesToTheSame() {
    Random random = new Random(7);
    for (int pair = 0; pair < 4_000; pair++) {
      String one = word(random);
      String two = random.nextBoolean() ? word(random) : one.replace('a', 'b') + "c";
      int slips = EditDistance.between(one, two, 40);
      for (int most = 0; most <= 4; most++) {
        assertEquals(
            Math.min(slips, most + 1), EditDistance.between(one, two, most), one + " " + two);
      }
    }
  }

  private static String word(Random random) {
    StringBuilder word = new StringBuilder();
    int length = random.nextInt(10);
    for (int at = 0; at < length; at++) {
      word.append((char) ('a' + random.nextInt(5)));
    }
    return word.toString();
  }
}
