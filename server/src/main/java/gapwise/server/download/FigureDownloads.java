package gapwise.server.download;

import gapwise.figure.Figure;
import gapwise.figure.FigureFile;
import gapwise.figure.FileKind;
import gapwise.figure.Medium;
import gapwise.figure.PngSize;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.server.address.Address;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.Semaphore;
import java.util.function.Function;

/**
 * The files of a figure under one path: drawing, picture, numbers, citations. A new plot gets all
 * of them by one call. The address says {@code for} (a medium), {@code sheet}, and for pictures
 * {@code width-mm}, {@code width-px}, {@code dpi}.
 */
public final class FigureDownloads {
  /** Names in an address that speak of the file and not of the question. */
  public static final List<String> NAMES = List.of("for", "sheet", "width-mm", "width-px", "dpi");

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
      routes.get(path + kind.ending(), context -> send(context, kind, name, figure));
    }
  }

  private static void send(
      Context context, FileKind kind, String name, Function<Context, Figure> figure) {
    FigureFile.Wish wish = wish(new Address(context.queryParamMap()));
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
    context
        .contentType(kind.mediaType())
        .header("Content-Disposition", "attachment; filename=\"" + file + "\"")
        .result(bytes);
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

  /**
   * What an address wishes of a drawing or picture.
   *
   * @throws WrongInputException for a medium that there is not, or a size out of bounds
   */
  public static FigureFile.Wish wish(Address address) {
    String code = address.first("for");
    Medium medium =
        code.isEmpty()
            ? Medium.PAGE
            : Medium.of(code).orElseThrow(() -> wrong("for", code, "one of " + Medium.codes()));
    OptionalInt sheet = whole(address, "sheet", "a number from 1");
    OptionalDouble millimetres = number(address, "width-mm", "a width in millimetres such as 85");
    OptionalInt pixels = whole(address, "width-px", "a width in pixels such as 1920");
    OptionalDouble dots = number(address, "dpi", "dots per inch such as 300");
    boolean sized = millimetres.isPresent() || pixels.isPresent() || dots.isPresent();
    return new FigureFile.Wish(
        medium,
        sheet.orElse(1),
        sized ? Optional.of(PngSize.asked(medium, millimetres, pixels, dots)) : Optional.empty());
  }

  private static OptionalInt whole(Address address, String name, String expected) {
    String text = address.first(name);
    if (text.isEmpty()) {
      return OptionalInt.empty();
    }
    if (!text.matches("\\d{1,6}")) {
      throw wrong(name, text, expected);
    }
    return OptionalInt.of(Integer.parseInt(text));
  }

  private static OptionalDouble number(Address address, String name, String expected) {
    String text = address.first(name);
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    if (!text.matches("\\d{1,6}([.,]\\d{1,3})?")) {
      throw wrong(name, text, expected);
    }
    return OptionalDouble.of(Double.parseDouble(text.replace(',', '.')));
  }

  private static WrongInputException wrong(String name, String found, String expected) {
    return new WrongInputException(
        List.of(
            new Problem(
                name, "unknown-value", "Found '" + found + "'; expected " + expected + ".")));
  }
}
