package gapwise.paper.file;

import gapwise.paper.Ask;
import gapwise.paper.Caps;
import gapwise.paper.Frame;
import gapwise.paper.Guard;
import gapwise.paper.Outcome;
import gapwise.paper.OwnFolder;
import gapwise.paper.Page;
import gapwise.paper.Picture;
import gapwise.paper.Reader;
import gapwise.paper.Refused;
import gapwise.paper.Reply;
import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;

/**
 * The process that reads papers, for one server: it is asked over its standard input and answers
 * over its standard output, one thing after another, and reads no file but the one that it is asked
 * about. It ends when its input does, whatever it is at, so that none outlives its server.
 */
final class ReaderMain {
  private final DataOutputStream out;
  private final BlockingQueue<Ask> asked = new LinkedBlockingQueue<>();
  private final Map<Long, PaperFile> open = new LinkedHashMap<>(Reader.MOST_OPEN, 0.75f, true);
  private volatile Guard now = new Guard(Caps.STANDARD);

  private ReaderMain(DataOutputStream out) {
    this.out = out;
  }

  /** Runs until the input ends. */
  public static void main(String[] arguments) throws InterruptedException, IOException {
    DataOutputStream out = new DataOutputStream(new BufferedOutputStream(System.out));
    // Nothing else may come between the answers.
    System.setOut(System.err);
    ReaderMain reader = new ReaderMain(out);
    Thread listening = new Thread(reader::listen, "asked");
    listening.setDaemon(true);
    listening.start();
    Reply.greeting().write(out);
    while (true) {
      reader.answer(reader.asked.take());
    }
  }

  private void listen() {
    try (DataInputStream in = new DataInputStream(new BufferedInputStream(System.in))) {
      Optional<Frame> frame = Frame.read(in);
      while (frame.isPresent()) {
        Ask ask = Ask.read(frame.get());
        if (ask.what() == Ask.What.STOP) {
          now.stop();
        } else {
          asked.add(ask);
        }
        frame = Frame.read(in);
      }
    } catch (IOException unreadable) {
      // Whoever asked has gone, or what comes is no question: either way nothing is left to do.
      asked.clear();
    }
    // At once, in the middle of whatever is read.
    OwnFolder.ofThisProcess().ifPresent(OwnFolder::delete);
    Runtime.getRuntime().halt(0);
  }

  private void answer(Ask ask) throws IOException {
    now = new Guard(ask.caps());
    if (ask.what() == Ask.What.CLOSE) {
      Optional.ofNullable(open.remove(ask.paper())).ifPresent(PaperFile::close);
      Reply.opened(0, 0).frame().write(out);
      return;
    }
    Outcome<PaperFile> file = file(ask);
    if (file instanceof Outcome.Done<PaperFile> done) {
      answer(ask, done.value());
    } else {
      Reply.of(((Outcome.Undone<PaperFile>) file).refused(), 0).frame().write(out);
    }
  }

  private void answer(Ask ask, PaperFile file) throws IOException {
    switch (ask.what()) {
      case PAGE -> {
        Outcome<Page> page = file.page(ask.page(), now);
        Reply reply =
            page instanceof Outcome.Done<Page> done
                ? Reply.of(done.value(), file.takenSince())
                : Reply.of(((Outcome.Undone<Page>) page).refused(), file.takenSince());
        reply.frame().write(out);
      }
      case PICTURE -> {
        Outcome<Picture> picture = file.picture(ask.page(), ask.dotsPerInch(), now);
        if (picture instanceof Outcome.Done<Picture> done) {
          Reply.of(done.value(), file.takenSince()).frame().with(done.value()).write(out);
        } else {
          Refused refused = ((Outcome.Undone<Picture>) picture).refused();
          Reply.of(refused, file.takenSince()).frame().write(out);
        }
      }
      case OPEN, CLOSE, STOP -> Reply.opened(file.pages(), file.takenSince()).frame().write(out);
    }
  }

  /** The file, which may have been opened by another process before, or let go. */
  private Outcome<PaperFile> file(Ask ask) {
    PaperFile known = open.get(ask.paper());
    if (known != null) {
      return new Outcome.Done<>(known);
    }
    Outcome<PaperFile> fresh = PaperFile.open(Path.of(ask.file()), now);
    if (fresh instanceof Outcome.Done<PaperFile> done) {
      open.put(ask.paper(), done.value());
      Iterator<PaperFile> oldest = open.values().iterator();
      while (open.size() > Reader.MOST_OPEN) {
        oldest.next().close();
        oldest.remove();
      }
    }
    return fresh;
  }
}
