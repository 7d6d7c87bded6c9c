package gapwise.server.download;

import gapwise.figure.Figure;
import gapwise.figure.drawing.Medium;
import gapwise.figure.file.FigureFile;
import gapwise.figure.file.FileKind;
import gapwise.problem.WrongInputException;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.FigureAddress;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.util.concurrent.Semaphore;
import java.util.function.Function;

/**
 * The files of a figure under one path: drawing, picture, numbers, citations. A new plot gets all
 * of them by one call. What an address wishes of a file {@link FigureAddress} reads.
 */
public final class FigureDownloads {
  /** A large picture is held in memory whole, so that few are painted at one time. */
  private static final Semaphore PAINTING = new Semaphore(2, true);

  private FigureDownloads() {}

  /**
   * Adds a route for each kind of file.
   *
   * @param path such as "/api/v1/forest"; its last part names the files
   * @param figure what an address asks for; it throws a {@link WrongInputException} where there is
   *     nothing to draw
   */
  public static void add(Routes routes, String path, Function<Context, Figure> figure) {
    String name = path.substring(path.lastIndexOf('/') + 1);
    for (FileKind kind : FileKind.values()) {
      routes.get(path + kind.ending(), Right.SEE, context -> send(context, kind, name, figure));
    }
  }

  private static void send(
      Context context, FileKind kind, String name, Function<Context, Figure> figure) {
    FigureFile.Wish wish = FigureAddress.wish(new Address(context.queryParamMap()));
    send(context, kind, name, figure.apply(context), wish);
  }

  /** Sends a figure as a file. */
  public static void send(
      Context context, FileKind kind, String name, Figure figure, FigureFile.Wish wish) {
    byte[] bytes = kind == FileKind.PNG ? painted(figure, wish) : file(figure, kind, wish);
    String suffix = wish.medium() == Medium.PAGE ? "" : "-" + wish.medium().code();
    String sheet = wish.sheet() == 1 ? "" : "-" + wish.sheet();
    boolean drawn = kind == FileKind.SVG || kind == FileKind.PNG;
    String file = name + (drawn ? suffix + sheet : "") + kind.ending();
    Attachment.send(context, kind.mediaType(), file, bytes);
  }

  private static byte[] painted(Figure figure, FigureFile.Wish wish) {
    PAINTING.acquireUninterruptibly();
    try {
      return file(figure, FileKind.PNG, wish);
    } finally {
      PAINTING.release();
    }
  }

  private static byte[] file(Figure figure, FileKind kind, FigureFile.Wish wish) {
    return FigureFile.of(figure, kind, wish);
  }
}
