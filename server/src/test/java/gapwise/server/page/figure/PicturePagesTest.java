package gapwise.server.page.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.RunningServer;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pictures of figures handed in by themselves: read off, refused and removed. */
class PicturePagesTest {
  @TempDir static Path folder;
  private static RunningServer running;
  private static FigureForms forms;

  @BeforeAll
  static void open() {
    running = RunningServer.withStudies(folder.resolve("home"));
    forms = new FigureForms(running);
  }

  @AfterAll
  static void close() {
    running.close();
  }

  /** An invented curve of four patients that falls to 75, 50 and 25 % after 2, 4 and 6 months. */
  private static byte[] curve() throws IOException {
    BufferedImage image = new BufferedImage(500, 400, BufferedImage.TYPE_INT_RGB);
    Graphics2D drawing = image.createGraphics();
    drawing.setColor(Color.WHITE);
    drawing.fillRect(0, 0, 500, 400);
    drawing.setColor(Color.BLACK);
    drawing.drawLine(50, 350, 450, 350);
    drawing.drawLine(50, 50, 50, 350);
    drawing.setColor(new Color(0, 90, 200));
    drawing.setStroke(new BasicStroke(3, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER));
    drawing.drawPolyline(
        new int[] {50, 130, 130, 210, 210, 290, 290, 450},
        new int[] {50, 50, 125, 125, 200, 200, 275, 275},
        8);
    drawing.dispose();
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    ImageIO.write(image, "png", png);
    return png.toByteArray();
  }

  private static String handedIn(String draft) throws IOException, InterruptedException {
    HttpResponse<String> kept =
        forms.upload(draft + "/figure/picture", "picture", "f.png", curve());
    assertEquals(303, kept.statusCode(), kept.body());
    return kept.headers().firstValue("Location").orElseThrow();
  }

  private static Map<String, String> typed(String image) {
    Map<String, String> fields = new TreeMap<>();
    fields.put("image", image);
    fields.put("x1-at", "50 350");
    fields.put("x1-value", "0");
    fields.put("x2-at", "450 350");
    fields.put("x2-value", "10");
    fields.put("y1-at", "50 350");
    fields.put("y1-value", "0");
    fields.put("y2-at", "50 50");
    fields.put("y2-value", "100");
    fields.put("arm", "A");
    fields.put("outcome", "time-to-union");
    fields.put("unit", "months");
    fields.put("patients", "4");
    fields.put("events", "3");
    return fields;
  }

  private static String points(String page) {
    return page.replaceFirst("(?s).*<textarea id=\"points\"[^>]*>([^<]*)</textarea>.*", "$1");
  }

  @Test
  void aCurveOfAPictureIsFollowedTakenAndFoundAgain() throws IOException, InterruptedException {
    String draft = forms.begin("picture2031");
    String page = handedIn(draft);
    String image = page.replaceFirst(".*image=", "");
    assertEquals(200, running.get(page).statusCode());
    assertEquals(200, running.get("/pictures/" + image + ".png").statusCode());

    Map<String, String> fields = typed(image);
    String followed =
        forms.post(draft + "/figure", FigureForms.with(fields, "follow", "170 125")).body();
    fields.put("points", points(followed));
    HttpResponse<String> looked = forms.post(draft + "/figure", fields);
    assertTrue(looked.body().contains("It has the 3 events"), looked.body());
    HttpResponse<String> taken =
        forms.post(
            draft + "/figure/take", FigureForms.with(fields, "looked", FigureForms.looked(looked)));
    assertEquals(303, taken.statusCode(), taken.body());

    String of = running.get(draft).body();
    String place = of.replaceFirst("(?s).*href=\"(/papers/[^\"]*\\?at=[^\"]*)\".*", "$1");
    HttpResponse<String> marked = running.get(place);
    assertEquals(200, marked.statusCode(), place);
    assertTrue(marked.body().contains("/pictures/" + image + ".png"), marked.body());
    assertTrue(marked.body().contains("class=\"marked\""));

    assertEquals(
        303, forms.post(draft + "/figure/picture/remove", Map.of("image", image)).statusCode());
    assertEquals(404, running.get("/pictures/" + image + ".png").statusCode());
    HttpResponse<String> gone = running.get(place);
    assertEquals(404, gone.statusCode());
    assertTrue(running.get(draft).body().contains("A: Time to union"), "what was read stays");
    String mend = of.replaceFirst("(?s).*href=\"([^\"]*figure\\?curve=\\d+)\".*", "$1");
    HttpResponse<String> without = running.get(mend);
    assertEquals(404, without.statusCode());
    assertTrue(without.body().contains("This picture is not kept here."), without.body());
  }

  @Test
  void whatIsNoPictureIsRefusedInWordsAndNotKept() throws IOException, InterruptedException {
    String draft = forms.begin("refused2031");
    String to = draft + "/figure/picture";
    HttpResponse<String> words =
        forms.upload(to, "picture", "f.png", "no picture".getBytes(StandardCharsets.UTF_8));
    assertEquals(422, words.statusCode());
    assertTrue(words.body().contains("no PNG or JPEG picture"), words.body());
    HttpResponse<String> cut = forms.upload(to, "picture", "f.png", Arrays.copyOf(curve(), 60));
    assertEquals(422, cut.statusCode());
    assertTrue(cut.body().contains("The picture is damaged"), cut.body());
    assertEquals(422, forms.upload(to, "other", "f.png", curve()).statusCode());
    assertEquals(
        404,
        forms
            .upload("/desk/0123456789ab/figure/picture", "picture", "f.png", curve())
            .statusCode());
  }

  @Test
  void aSmallFileOfManyPixelsIsRefused() throws IOException, InterruptedException {
    BufferedImage wide = new BufferedImage(12_000, 1_001, BufferedImage.TYPE_BYTE_BINARY);
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    ImageIO.write(wide, "png", png);
    HttpResponse<String> refused =
        forms.upload(
            forms.begin("bomb2031") + "/figure/picture", "picture", "f.png", png.toByteArray());
    assertEquals(422, refused.statusCode());
    assertTrue(refused.body().contains("12000 by 1001 pixels"), refused.body());
  }

  @Test
  void aPictureByAnyOtherNameIsNotThere() throws IOException, InterruptedException {
    assertEquals(404, running.get("/pictures/none.png").statusCode());
    assertEquals(404, running.get("/pictures/..%2Fgapwise.png").statusCode());
    String draft = forms.begin("none2031");
    HttpResponse<String> none =
        forms.post(
            draft + "/figure/picture/remove", Map.of("image", "0123456789abcdef0123456789abcdef"));
    assertEquals(404, none.statusCode());
    assertFalse(none.body().contains("Exception"));
  }
}
