package gapwise.server.download;

import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;

/** An answer that a browser keeps as a file. */
public final class Attachment {
  private Attachment() {}

  /**
   * Says that what follows is a file.
   *
   * @param type its media type
   * @param name its name, in letters that stand for themselves in a header
   */
  public static void announce(Context context, String type, String name) {
    context
        .contentType(type)
        .header("Content-Disposition", "attachment; filename=\"" + name + "\"");
  }

  /** Answers with a file. */
  public static void send(Context context, String type, String name, byte[] content) {
    announce(context, type, name);
    context.result(content);
  }

  /** Answers with a file of text in UTF-8. */
  public static void send(Context context, String type, String name, String content) {
    send(context, type, name, content.getBytes(StandardCharsets.UTF_8));
  }
}
