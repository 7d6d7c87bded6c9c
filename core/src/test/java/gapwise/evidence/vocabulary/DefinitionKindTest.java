package gapwise.evidence.vocabulary;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the words of a definition are read as; the wordings are invented after papers' habits. */
class DefinitionKindTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Union | Bridging of three of four cortices on two views | three-cortices",
        "Union | callus across at least 3 cortices and pain-free full weight bearing |"
            + " three-cortices walking-without-pain",
        "Infection | postoperative deep infection | ''",
        "Infection | post-operative deep infection | ''",
        "Infection | intra-operative signs of infection | ''",
        "Infection | reoperation for infection | return-to-theatre",
        "Infection | operated on again for deep infection | return-to-theatre",
        "Union | 3/4 cortices bridged | three-cortices",
        "Union | bridging of two cortices and walking without pain | two-cortices"
            + " walking-without-pain",
        "Union | all four cortices | all-cortices",
        "Union | bridging on CT | bridging-on-computed-tomography",
        "Union | complete consolidation on radiographs | all-cortices bridging-on-radiographs",
        "Union | radiological union | bridging-on-radiographs",
        "Union | frame off and no new deformity at three months | frame-off",
        "Union | removal of the external fixator | frame-off",
        // Says nothing of pain or walking: an examiner may have felt for movement alone.
        "Union | clinical healing at ten months | ''",
        "Union | clinical union | ''",
        "Union | by the opinion of the treating surgeon | surgeons-opinion",
        "Union | without further grafting | no-further-operation",
        "Union | as usual | ''",
        "Function and satisfaction | ASAMI score as modified by Paley | asami-criteria"
            + " paley-criteria",
        "Function and satisfaction | Johner-Wruhs criteria | johner-wruhs-criteria",
        "Function and satisfaction | Karlstrom and Olerud score | karlstrom-olerud-criteria",
        "Infection | pus, a sinus, or the same organism in two deep samples | deep-samples"
            + " sinus-or-pus",
        "Infection | any return to theatre for infection | return-to-theatre",
        "Infection | normal CRP and no clinical signs | signs-and-blood-markers",
        "Infection | all three cortices | ''",
        "Weight bearing | walking without pain | ''",
      })
  void aDefinitionIsReadByItsSigns(String family, String words, String codes) {
    assertEquals(
        codes.strip(),
        String.join(
            " ",
            DefinitionKind.proposed(family, words).stream().map(DefinitionKind::code).toList()));
  }
}
