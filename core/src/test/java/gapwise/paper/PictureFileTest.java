package gapwise.paper;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.zip.CRC32;
import java.util.zip.DeflaterOutputStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pictures handed in, sound and hostile; all are made here. */
class PictureFileTest {
  private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};

  @TempDir Path folder;

  private Path file(byte[] bytes) throws IOException {
    return Files.write(Files.createTempFile(folder, "picture", ".part"), bytes);
  }

  private static byte[] encoded(BufferedImage image, String format) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    assertTrue(ImageIO.write(image, format, out));
    return out.toByteArray();
  }

  private static BufferedImage square(int type) {
    BufferedImage image = new BufferedImage(40, 30, type);
    for (int at = 0; at < 10; at++) {
      image.setRGB(at, at, Color.RED.getRGB());
    }
    return image;
  }

  private static void part(DataOutputStream out, String name, byte[] data) throws IOException {
    byte[] named = name.getBytes(StandardCharsets.US_ASCII);
    CRC32 sum = new CRC32();
    sum.update(named);
    sum.update(data);
    out.writeInt(data.length);
    out.write(named);
    out.write(data);
    out.writeInt((int) sum.getValue());
  }

  /** A PNG as its standard (W3C PNG, 11.2) lays it out, of grey pixels that are all 0. */
  private static byte[] png(int width, int height, byte[] comment) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    DataOutputStream out = new DataOutputStream(bytes);
    out.write(SIGNATURE);
    ByteArrayOutputStream head = new ByteArrayOutputStream();
    DataOutputStream ihdr = new DataOutputStream(head);
    ihdr.writeInt(width);
    ihdr.writeInt(height);
    ihdr.write(new byte[] {8, 0, 0, 0, 0});
    part(out, "IHDR", head.toByteArray());
    if (comment.length > 0) {
      part(out, "zTXt", comment);
    }
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (DeflaterOutputStream deflate = new DeflaterOutputStream(packed)) {
      for (int row = 0; row < Math.min(height, 100); row++) {
        deflate.write(new byte[Math.min(width, 10_000) + 1]);
      }
    }
    part(out, "IDAT", packed.toByteArray());
    part(out, "IEND", new byte[0]);
    return bytes.toByteArray();
  }

  private static Refused refused(PagePicture picture) {
    assertTrue(picture instanceof Refused, "was taken");
    return (Refused) picture;
  }

  @Test
  void picturesOfBothKindsAreReadAndOnlyTheirPixelsAreKept() throws IOException {
    byte[] png = encoded(square(BufferedImage.TYPE_INT_ARGB), "png");
    Picture read = (Picture) PictureFile.read(file(png));
    assertEquals(40, read.width());
    assertEquals(40, read.shownWidth());
    BufferedImage again = ImageIO.read(read.png());
    assertEquals(Color.RED.getRGB(), again.getRGB(5, 5));
    assertEquals(Color.WHITE.getRGB(), again.getRGB(20, 5), "what was clear is white");
    assertTrue(
        PictureFile.read(file(encoded(square(BufferedImage.TYPE_INT_RGB), "jpeg")))
            instanceof Picture);
  }

  @Test
  void aLargePictureIsShownNoLargerThanAPage() throws IOException {
    BufferedImage wide = new BufferedImage(2160, 1080, BufferedImage.TYPE_BYTE_GRAY);
    Picture read = (Picture) PictureFile.read(file(encoded(wide, "png")));
    assertEquals(720, read.shownWidth(), 1e-9);
    assertEquals(360, read.shownHeight(), 1e-9);
    assertEquals(216, read.dotsPerInch(), 1e-9);
  }

  @Test
  void whatWasKeptIsTheSameWhenItIsOpenedAgain() throws IOException {
    Picture read =
        (Picture) PictureFile.read(file(encoded(square(BufferedImage.TYPE_INT_RGB), "png")));
    byte[] bytes = read.png().readAllBytes();
    Picture kept = PictureFile.kept(file(bytes));
    assertArrayEquals(bytes, kept.png().readAllBytes());
    assertEquals(40, kept.width());
  }

  @Test
  void aSmallFileOfABillionPixelsIsRefusedByItsSizeAlone() throws IOException {
    Refused refused = refused(PictureFile.read(file(png(40_000, 40_000, new byte[0]))));
    assertEquals(Refused.Reason.TOO_MUCH, refused.reason());
    assertTrue(refused.sentence().contains("40000 by 40000"), refused.sentence());
    assertEquals(
        Refused.Reason.TOO_MUCH,
        refused(PictureFile.read(file(png(Integer.MAX_VALUE, Integer.MAX_VALUE, new byte[0]))))
            .reason());
  }

  @Test
  void wordsBesideThePixelsAreNotUnpackedAndNotKept() throws IOException {
    ByteArrayOutputStream comment = new ByteArrayOutputStream();
    comment.write("Author\0\0".getBytes(StandardCharsets.US_ASCII));
    try (DeflaterOutputStream deflate = new DeflaterOutputStream(comment)) {
      byte[] million = new byte[1_000_000];
      Arrays.fill(million, (byte) 'x');
      for (int at = 0; at < 300; at++) {
        deflate.write(million);
      }
    }
    Picture read = (Picture) PictureFile.read(file(png(50, 50, comment.toByteArray())));
    String kept = new String(read.png().readAllBytes(), StandardCharsets.ISO_8859_1);
    assertFalse(kept.contains("Author"));
  }

  @Test
  void whatIsNoPictureOrADamagedOneIsRefusedInWords() throws IOException {
    assertEquals(
        Refused.Reason.NOT_A_PICTURE,
        refused(PictureFile.read(file("%PDF-1.7 and so on".getBytes(StandardCharsets.US_ASCII))))
            .reason());
    assertEquals(
        Refused.Reason.NOT_A_PICTURE,
        refused(PictureFile.read(file("GIF89a, a picture".getBytes(StandardCharsets.US_ASCII))))
            .reason());
    assertEquals(
        Refused.Reason.NOT_A_PICTURE, refused(PictureFile.read(file(new byte[0]))).reason());
    assertEquals(Refused.Reason.DAMAGED, refused(PictureFile.read(file(SIGNATURE))).reason());
  }

  @Test
  void spoiltFilesNeverEndInAnythingButAPictureOrWords() throws IOException {
    Random random = new Random(7);
    for (String format : new String[] {"png", "jpeg"}) {
      byte[] sound = encoded(square(BufferedImage.TYPE_INT_RGB), format);
      for (int turn = 0; turn < 150; turn++) {
        byte[] spoilt = Arrays.copyOf(sound, 1 + random.nextInt(sound.length));
        for (int at = 0; at < 1 + random.nextInt(8); at++) {
          spoilt[random.nextInt(spoilt.length)] = (byte) random.nextInt(256);
        }
        PagePicture read = PictureFile.read(file(spoilt));
        if (read instanceof Refused refused) {
          assertTrue(refused.sentence().endsWith("."), refused.sentence());
        }
      }
    }
  }

  @Test
  void aFileOfTooManyBytesIsNotOpened() throws IOException {
    Path large = folder.resolve("large");
    try (RandomAccessFile out = new RandomAccessFile(large.toFile(), "rw")) {
      out.setLength(PictureFile.MOST_BYTES + 1);
    }
    assertEquals(Refused.Reason.TOO_MANY_BYTES, refused(PictureFile.read(large)).reason());
  }
}
