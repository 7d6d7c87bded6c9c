package gapwise.screening;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Two people who screen, on invented references. */
class BoardTest {
  private static final Reader ANNA = new Reader("AB");
  private static final Reader BERT = new Reader("CD");
  private static final Reader CHRIS = new Reader("EF");
  private static final String REASON = "Not after an injury";

  private static String ref(int number) {
    return "ref-%016x".formatted(number);
  }

  private static Vote title(int number, Reader reader, Choice choice) {
    return new Vote(
        ref(number), Stage.TITLE, reader, choice, Optional.empty(), Instant.ofEpochSecond(number));
  }

  private static Vote full(int number, Reader reader, Choice choice, String reason) {
    return new Vote(
        ref(number),
        Stage.FULL_TEXT,
        reader,
        choice,
        Optional.of(reason).filter(told -> !told.isEmpty()),
        Instant.ofEpochSecond(number));
  }

  private static Board board(int papers, Vote... votes) {
    List<String> ids = new ArrayList<>();
    for (int i = 1; i <= papers; i++) {
      ids.add(ref(i));
    }
    return new Board(ids, id -> id, List.of(votes), List.of());
  }

  @Test
  void aPaperGoesOnOnceTwoKeepIt() {
    Board one = board(1, title(1, ANNA, Choice.KEEP));
    assertEquals(new Standing.Waiting(1), one.standing(Stage.TITLE, ref(1)));
    assertTrue(one.papers(Stage.FULL_TEXT).isEmpty());
    Board two = board(1, title(1, ANNA, Choice.KEEP), title(1, BERT, Choice.UNSURE));
    assertTrue(two.standing(Stage.TITLE, ref(1)).keeps());
    assertEquals(List.of(ref(1)), two.papers(Stage.FULL_TEXT));
  }

  @Test
  void oneNameInOtherCapitalsIsOnePerson() {
    Board board = board(1, title(1, ANNA, Choice.KEEP), title(1, new Reader("ab"), Choice.EXCLUDE));
    assertEquals(new Standing.Waiting(1), board.standing(Stage.TITLE, ref(1)));
  }

  @Test
  void differentChoicesStandApartUntilSomebodySettlesThem() {
    Vote keep = title(1, ANNA, Choice.KEEP);
    Vote out = title(1, BERT, Choice.EXCLUDE);
    assertEquals(1, board(1, keep, out).apart(Stage.TITLE).size());
    Ruling ruling =
        new Ruling(
            ref(1),
            Stage.TITLE,
            Choice.KEEP,
            Optional.empty(),
            CHRIS,
            "the abstract does not say",
            Instant.EPOCH);
    Board settled = new Board(List.of(ref(1)), id -> id, List.of(keep, out), List.of(ruling));
    assertTrue(settled.apart(Stage.TITLE).isEmpty());
    assertTrue(settled.standing(Stage.TITLE, ref(1)).keeps());
  }

  @Test
  void twoReasonsForOneFullTextAreADifference() {
    Vote[] votes = {
      title(1, ANNA, Choice.KEEP),
      title(1, BERT, Choice.KEEP),
      full(1, ANNA, Choice.EXCLUDE, REASON),
      full(1, BERT, Choice.EXCLUDE, "No result of patients")
    };
    assertEquals(1, board(1, votes).apart(Stage.FULL_TEXT).size());
    votes[3] = full(1, BERT, Choice.EXCLUDE, REASON);
    assertEquals(
        new Standing.Decided(Choice.EXCLUDE, Optional.of(REASON), Optional.empty()),
        board(1, votes).standing(Stage.FULL_TEXT, ref(1)));
  }

  @Test
  void whoHasChosenIsNotAskedAgainAndTwoAreEnough() {
    Board board =
        board(
            3,
            title(1, ANNA, Choice.KEEP),
            title(2, ANNA, Choice.EXCLUDE),
            title(2, BERT, Choice.KEEP));
    assertEquals(List.of(ref(3)), board.next(Stage.TITLE, ANNA));
    assertEquals(List.of(ref(1), ref(3)), board.next(Stage.TITLE, BERT));
    assertEquals(List.of(ref(1), ref(3)), board.next(Stage.TITLE, CHRIS));
  }

  @Test
  void recordsOfOnePaperAreOne() {
    Board board =
        new Board(
            List.of(ref(1)),
            id -> ref(1),
            List.of(title(1, ANNA, Choice.EXCLUDE), title(2, BERT, Choice.EXCLUDE)),
            List.of());
    assertEquals(
        new Standing.Decided(Choice.EXCLUDE, Optional.empty(), Optional.empty()),
        board.standing(Stage.TITLE, ref(2)));
  }

  /**
   * Both keep 20, the first alone 5, the second alone 10, neither 15: observed 0.70, by chance
   * 0.50, kappa 0.40 (a textbook example, from memory). Standard error worked by hand from Fleiss,
   * Cohen and Everitt 1969, equation 13, in Python: 0.126996.
   */
  @Test
  void agreementBeyondChance() {
    Agreement two = new Agreement(ANNA, BERT, 20, 5, 10, 15);
    assertEquals(50, two.papers());
    assertEquals(35, two.alike());
    Agreement.Beyond kappa = two.kappa().orElseThrow();
    assertEquals(0.40, kappa.estimate(), 1e-12);
    assertEquals(0.126996, (kappa.upper() - kappa.lower()) / 2 / 1.959964, 1e-5);
    assertTrue(new Agreement(ANNA, BERT, 9, 0, 0, 0).kappa().isEmpty());
  }

  @Test
  void theBoardCountsAgreementOfPapersThatBothRead() {
    Board board =
        board(
            4,
            title(1, ANNA, Choice.KEEP),
            title(1, BERT, Choice.UNSURE),
            title(2, ANNA, Choice.KEEP),
            title(2, BERT, Choice.EXCLUDE),
            title(3, ANNA, Choice.EXCLUDE),
            title(3, BERT, Choice.EXCLUDE),
            title(4, ANNA, Choice.EXCLUDE));
    assertEquals(List.of(new Agreement(ANNA, BERT, 1, 1, 0, 1)), board.agreement(Stage.TITLE));
  }

  @Test
  void whatCannotBeChosenIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> title(1, ANNA, Choice.NOT_HAD));
    assertThrows(IllegalArgumentException.class, () -> full(1, ANNA, Choice.UNSURE, ""));
    assertThrows(IllegalArgumentException.class, () -> full(1, ANNA, Choice.EXCLUDE, ""));
    assertThrows(IllegalArgumentException.class, () -> new Reader("  "));
    assertTrue(Reader.of("<script>").isEmpty());
    assertEquals("A. B.", Reader.of("  A.   B. ").orElseThrow().name());
  }

  /** Whatever is chosen in whatever order: the boxes of PRISMA 2020 add up. */
  @Test
  void theFlowAlwaysAddsUp() {
    Random random = new Random(20);
    for (int run = 0; run < 200; run++) {
      int papers = 1 + random.nextInt(30);
      List<Vote> votes = new ArrayList<>();
      for (int i = 0; i < random.nextInt(150); i++) {
        Reader reader = List.of(ANNA, BERT, CHRIS).get(random.nextInt(3));
        Stage stage = Stage.values()[random.nextInt(2)];
        Choice choice = Choice.values()[random.nextInt(4)];
        int number = 1 + random.nextInt(papers);
        if (stage.offers(choice)) {
          votes.add(
              stage == Stage.TITLE
                  ? title(number, reader, choice)
                  : full(number, reader, choice, choice == Choice.EXCLUDE ? REASON : ""));
        }
      }
      Board board = board(papers, votes.toArray(Vote[]::new));
      int copies = random.nextInt(5);
      Flow flow =
          Flow.of(
              board,
              Map.of("One database", papers + copies),
              List.of(REASON),
              paper -> List.of("study-" + paper.charAt(paper.length() - 1)));
      assertEquals(copies, flow.duplicates());
      assertEquals(
          papers,
          flow.leftOutByTitle()
              + flow.waitingAtTitle()
              + flow.notHad()
              + flow.waitingFullText()
              + flow.leftOutInFull()
              + flow.included());
      assertTrue(flow.studies() <= flow.included());
    }
  }

  @Test
  void aFlowThatDoesNotAddUpIsRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new Flow(Map.of("One", 3), 1, 1, 1, 0, 0, 0, 0, Map.of(), 0, 0, 0));
  }

  @Test
  void wordsAreMarkedWholeOrWithAnyEndingAndTheTextStays() {
    Protocol protocol = new Protocol("", List.of(), List.of("tibia*", "bone loss"), List.of("rat"));
    String text = "Tibial bone loss: rate of union, rat model (tibia)";
    List<MarkedText.Stretch> stretches = MarkedText.of(text, protocol);
    assertEquals(text, String.join("", stretches.stream().map(MarkedText.Stretch::text).toList()));
    assertEquals(
        List.of("Tibial", "bone loss", "tibia"),
        stretches.stream()
            .filter(one -> one.kind() == MarkedText.Kind.FOR)
            .map(MarkedText.Stretch::text)
            .toList());
    assertEquals(
        List.of("rat"),
        stretches.stream()
            .filter(one -> one.kind() == MarkedText.Kind.AGAINST)
            .map(MarkedText.Stretch::text)
            .toList());
  }
}
