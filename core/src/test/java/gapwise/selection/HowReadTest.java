package gapwise.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.evidence.Arm;
import gapwise.evidence.Citation;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.ReadAs;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** How the studies behind a result were read, in words that are true of none, one and many. */
class HowReadTest {
  private static Study study(String id, ExtractionStatus status) {
    return Study.with(id, Citation.with("Pegs of the moon").build())
        .status(status)
        .arms(List.of(Arm.with("A", MethodUsed.of(Method.of("autograft"))).build()))
        .build();
  }

  @Test
  void nothingIsSaidOfNoStudy() {
    assertEquals(Optional.empty(), HowRead.of(List.of()).words());
  }

  @Test
  void oneStudyNamedTwiceIsOne() {
    Study one = study("a", ExtractionStatus.AGREED);
    assertEquals(
        Optional.of("The one study is agreed by two who read it apart."),
        HowRead.of(List.of(one, one)).words());
  }

  @Test
  void aStudyReadSecondHandIsThatWhoeverCheckedIt() {
    Study told = study("b", ExtractionStatus.VERIFIED).but().readAs(ReadAs.SECOND_HAND).build();
    HowRead read =
        HowRead.of(
            List.of(
                study("a", ExtractionStatus.AGREED),
                told,
                study("c", ExtractionStatus.EXTRACTED),
                study("d", ExtractionStatus.EXTRACTED),
                study("e", ExtractionStatus.DRAFT)));
    assertEquals(new HowRead(1, 0, 2, 1, 1), read);
    assertEquals(
        Optional.of(
            "Of the 5 studies, 1 is agreed by two who read it apart, 2 are extracted once, 1 is a"
                + " draft, 1 is read in another paper that tells of it."),
        read.words());
  }
}
