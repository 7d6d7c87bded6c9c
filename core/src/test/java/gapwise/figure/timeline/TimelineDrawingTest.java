package gapwise.figure.timeline;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.figure.Provenance;
import gapwise.figure.drawing.Contrast;
import gapwise.figure.drawing.DrawnSvg;
import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.MethodMark;
import gapwise.figure.drawing.Picture;
import gapwise.figure.file.FigureFile;
import gapwise.figure.file.FileKind;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

public class TimelineDrawingTest {
  private static final MethodMark RING =
      new MethodMark("bone-transport", "Bone transport", "ring", "#2128D2");

  public static Timeline invented() {
    List<Timeline.Stretch> course =
        List.of(
            new Timeline.Stretch(1, "in the frame", Timeline.Load.FRAME, 0, 9),
            new Timeline.Stretch(2, "partial weight", Timeline.Load.PARTIAL, 9, 11),
            new Timeline.Stretch(3, "unsupported", Timeline.Load.FREE, 11, 15));
    List<Timeline.Reached> reached =
        List.of(
            new Timeline.Reached("external frame taken off", 9),
            new Timeline.Reached("partial weight bearing", 9.2),
            new Timeline.Reached("full weight without any support", 11));
    List<Timeline.Pooled> pooled =
        List.of(
            new Timeline.Pooled(
                "external frame taken off",
                RING,
                6,
                Estimate.of(12, 10, 14),
                Optional.of(new Limits(7, 60))));
    List<Timeline.Stretch> later =
        List.of(new Timeline.Stretch(3, "unsupported", Timeline.Load.FREE, 2, 6));
    return new Timeline(
        "The course of one case",
        List.of("Each track counts from another moment."),
        List.of(
            new Timeline.Track("frame put on", course, reached, pooled),
            new Timeline.Track("frame taken off", later, List.of(), List.of())),
        List.of("Invented, proves nothing."),
        new Provenance(6, "", "random effects", "test", Optional.empty(), true));
  }

  @ParameterizedTest
  @EnumSource(Medium.class)
  void noWordsMeetOthersOrLeaveTheDrawing(Medium medium) {
    TimelineDrawing.draw(invented(), medium).forEach(TimelineDrawingTest::noWordsMeet);
    TimelineDrawing.draw(threeClocks(), medium).forEach(TimelineDrawingTest::noWordsMeet);
  }

  private static void noWordsMeet(Picture picture) {
    List<DrawnSvg.Letters> letters = DrawnSvg.of(picture).letters();
    assertTrue(letters.size() > 15, "letters were found: " + letters.size());
    for (int i = 0; i < letters.size(); i++) {
      DrawnSvg.Letters one = letters.get(i);
      assertTrue(one.left() >= 0 && one.right() <= picture.width(), one.toString());
      assertTrue(one.top() >= 0 && one.bottom() <= picture.height(), one.toString());
      for (DrawnSvg.Letters other : letters.subList(i + 1, letters.size())) {
        assertTrue(!one.overlaps(other), one + " meets " + other);
      }
    }
  }

  /** The first track of the invented case on three clocks: more than one slide holds. */
  private static Timeline threeClocks() {
    Timeline.Track track = invented().tracks().get(0);
    List<Timeline.Track> tracks =
        Stream.of("injury", "frame put on", "grafting")
            .map(
                from ->
                    new Timeline.Track(
                        from,
                        track.course(),
                        track.reached(),
                        Collections.nCopies(5, track.pooled().get(0))))
            .toList();
    return new Timeline(
        invented().title(),
        invented().sentences(),
        tracks,
        invented().cautions(),
        invented().provenance());
  }

  @ParameterizedTest
  @EnumSource(Medium.class)
  void tracksThatDoNotFitOnePageStandOnFurtherOnesWithKeyAndCautions(Medium medium) {
    List<Picture> pages = TimelineDrawing.draw(threeClocks(), medium);
    assertEquals(pages.size(), threeClocks().sheets(medium));
    int tracks = 0;
    for (Picture page : pages) {
      tracks += page.svg().split("data-part=\"track\"", -1).length - 1;
      assertTrue(page.svg().contains("Invented, proves nothing."), page.svg());
      assertTrue(page.svg().contains("where a new series may lie"), page.svg());
      OptionalDouble most = medium.style(0).sheet().pageHeight();
      double shape = page.height() / page.width() * medium.style(0).sheet().width();
      assertTrue(shape <= most.orElse(Double.POSITIVE_INFINITY) + 1e-6, medium + ": " + shape);
    }
    assertEquals(3, tracks);
  }

  @Test
  void slidesOfACaseAreSixteenToNineAndNumbered() {
    List<Picture> slides = TimelineDrawing.draw(threeClocks(), Medium.SLIDE);
    assertTrue(slides.size() > 1);
    for (int i = 0; i < slides.size(); i++) {
      assertEquals(16.0 / 9, slides.get(i).width() / slides.get(i).height(), 1e-9);
      String page = "Page " + (i + 1) + " of " + slides.size();
      assertTrue(slides.get(i).svg().contains(page), page);
    }
  }

  @Test
  void eachPhaseStandsOnEachClockAndTheWordsOfTheFigureSayAllItShows() {
    Picture picture = TimelineDrawing.draw(invented(), Medium.PAGE).get(0);
    assertEquals(4, picture.svg().split("data-part=\"phase\"", -1).length - 1);
    assertEquals(2, picture.svg().split("data-part=\"track\"", -1).length - 1);
    String description = DrawnSvg.of(picture).all("desc").get(0).getTextContent();
    assertTrue(description.contains("1 in the frame, month 0.0 to 9.0."), description);
    assertTrue(
        description.contains(
            "Bone transport, external frame taken off: 12.0 (10.0 to 14.0) months, 6 series, a"
                + " new series 7.0 to 60.0."),
        description);
    assertTrue(description.contains(Provenance.INVENTED));
  }

  @Test
  void theTableHoldsPhasesMilestonesAndPooledTimesWithTheirClock() {
    String csv = new TimelineTable(invented()).csv();
    assertTrue(csv.contains("phase,frame put on,in the frame,,0.0,9.0,"), csv);
    assertTrue(csv.contains("case,frame put on,partial weight bearing,,,,9.2,"), csv);
    assertTrue(
        csv.contains(
            "pooled,frame put on,external frame taken off,bone-transport,,,12.0,10.0,14.0,7.0,60.0,6"),
        csv);
  }

  @Test
  void numbersOnPhasesCanBeReadInGrey() {
    for (Timeline.Load load : Timeline.Load.values()) {
      String ink = TimelineKey.isDark(load) ? Ink.GROUND : Ink.INK;
      assertTrue(Contrast.between(ink, TimelineKey.fill(load)) >= 4.5, load.name());
    }
  }

  @Test
  void theSameValueGivesTheSameBytesAndAPicture() {
    List<Picture> one = TimelineDrawing.draw(invented(), Medium.SLIDE);
    assertEquals(one, TimelineDrawing.draw(invented(), Medium.SLIDE));
    FigureFile.Wish slide = FigureFile.Wish.of(Medium.SLIDE);
    byte[] png = FigureFile.of(invented(), FileKind.PNG, slide);
    assertArrayEquals(png, FigureFile.of(invented(), FileKind.PNG, slide));
    assertTrue(png.length > 5000);
  }
}
