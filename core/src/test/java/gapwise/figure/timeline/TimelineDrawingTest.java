package gapwise.figure.timeline;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.Contrast;
import gapwise.figure.drawing.DrawnSvg;
import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Picture;
import gapwise.figure.file.FigureFile;
import gapwise.figure.file.FileKind;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class TimelineDrawingTest {
  @ParameterizedTest
  @EnumSource(Medium.class)
  void noWordsMeetOthersOrLeaveTheDrawing(Medium medium) {
    InventedTimelines.oneCase().draw(medium).forEach(TimelineDrawingTest::noWordsMeet);
    threeClocks().draw(medium).forEach(TimelineDrawingTest::noWordsMeet);
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
    Timeline.Track track = InventedTimelines.oneCase().tracks().get(0);
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
        InventedTimelines.oneCase().title(),
        InventedTimelines.oneCase().sentences(),
        tracks,
        InventedTimelines.oneCase().cautions(),
        InventedTimelines.oneCase().provenance());
  }

  @ParameterizedTest
  @EnumSource(Medium.class)
  void tracksThatDoNotFitOnePageStandOnFurtherOnesWithKeyAndCautions(Medium medium) {
    List<Picture> pages = threeClocks().draw(medium);
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
    List<Picture> slides = threeClocks().draw(Medium.SLIDE);
    assertTrue(slides.size() > 1);
    for (int i = 0; i < slides.size(); i++) {
      assertEquals(16.0 / 9, slides.get(i).width() / slides.get(i).height(), 1e-9);
      String page = "Page " + (i + 1) + " of " + slides.size();
      assertTrue(slides.get(i).svg().contains(page), page);
    }
  }

  @Test
  void eachPhaseStandsOnEachClockAndTheWordsOfTheFigureSayAllItShows() {
    Picture picture = InventedTimelines.oneCase().draw(Medium.PAGE).get(0);
    assertEquals(4, picture.svg().split("data-part=\"phase\"", -1).length - 1);
    assertEquals(2, picture.svg().split("data-part=\"track\"", -1).length - 1);
    String description = DrawnSvg.of(picture).all("desc").get(0).getTextContent();
    assertTrue(description.contains("1 in the frame, month 0.0 to 9.0."), description);
    assertTrue(
        description.contains(
            "Bone transport, external frame taken off: 12.0 (10.0 to 14.0) months, 6 series, a"
                + " new series 7.0 to 60.0."),
        description);
    assertTrue(description.contains(FigureProvenance.INVENTED));
  }

  @Test
  void theTableHoldsPhasesMilestonesAndPooledTimesWithTheirClock() {
    String csv = new TimelineTable(InventedTimelines.oneCase()).csv();
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
    List<Picture> one = InventedTimelines.oneCase().draw(Medium.SLIDE);
    assertEquals(one, InventedTimelines.oneCase().draw(Medium.SLIDE));
    FigureFile.Wish slide = new FigureFile.Wish(Medium.SLIDE, 1, Optional.empty());
    byte[] png = FigureFile.of(InventedTimelines.oneCase(), FileKind.PNG, slide);
    assertArrayEquals(png, FigureFile.of(InventedTimelines.oneCase(), FileKind.PNG, slide));
    assertTrue(png.length > 5000);
  }
}
