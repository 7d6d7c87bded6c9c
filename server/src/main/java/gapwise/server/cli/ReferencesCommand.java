package gapwise.server.cli;

import gapwise.evidence.Citation;
import gapwise.problem.Problem;
import gapwise.reference.format.FileAnswer;
import gapwise.reference.format.ReferenceFile;
import gapwise.reference.format.SearchDone;
import gapwise.reference.format.SearchLog;
import gapwise.reference.kept.KeptLoad;
import gapwise.reference.pair.ProposalsCsv;
import gapwise.reference.pair.ReferenceProposals;
import gapwise.reference.pair.Verdict;
import gapwise.server.home.Records;
import gapwise.server.job.reference.FilesKept;
import gapwise.store.OwnerOnly;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Reads files of references and proposes copies among them. */
@Command(
    name = "references",
    description =
        "Read files of references (RIS, MEDLINE text, BibTeX, CSL-JSON), tell what is doubtful in"
            + " them, and propose which records are copies of one paper or belong together. Nothing"
            + " is merged. With --keep the records are kept in the evidence base.",
    mixinStandardHelpOptions = true)
public final class ReferencesCommand implements Callable<Integer> {
  @Parameters(arity = "1..*", paramLabel = "FILE", description = "Files of references.")
  private List<Path> files;

  @Option(
      names = "--home",
      paramLabel = "DIR",
      description = "Folder of the evidence base, whose studies are compared too.")
  private Optional<Path> home = Optional.empty();

  @Mixin private DatabaseOption database;

  @Option(
      names = "--searches",
      paramLabel = "CSV",
      description =
          "Log of the searches, with the columns database, date, words, count_reported and file.")
  private Optional<Path> searches = Optional.empty();

  @Option(
      names = "--out",
      paramLabel = "CSV",
      description = "New file for the proposals; they are printed unless it is named.")
  private Optional<Path> out = Optional.empty();

  @Option(
      names = "--keep",
      description =
          "Keep what was read, and the log of the searches, in the evidence base of --home. A file"
              + " that was kept before adds nothing.")
  private boolean keep;

  @Option(names = "--who", description = "Who accepts what is kept. Default: ${DEFAULT-VALUE}")
  private String who = System.getProperty("user.name", "someone");

  @Override
  public Integer call() throws IOException {
    if ((keep || database.isGiven()) && home.isEmpty()) {
      System.err.println("Name the evidence base with --home, so that there is where to keep.");
      return Exit.WRONG;
    }
    if (out.isPresent() && Files.exists(out.get())) {
      System.err.println(out.get() + " is there already; name a new file.");
      return Exit.WRONG;
    }
    List<SearchDone> log =
        searches.isPresent() ? SearchLog.read(ReferenceFile.at(searches.get())) : List.of();
    List<ReferenceFile> opened = new ArrayList<>();
    for (Path file : files) {
      // A long way to a file says less than its name; a short one tells two files apart.
      String name = file.isAbsolute() ? lastName(file) : file.toString();
      opened.add(new ReferenceFile(name, () -> Files.newInputStream(file)));
    }
    ReferenceProposals proposals = ReferenceProposals.of(opened, base());
    write(proposals);
    tell(proposals);
    if (searches.isPresent()) {
      SearchDone.heldAgainst(log, named(proposals.files())).forEach(System.err::println);
    }
    if (keep) {
      keep(opened, log);
    }
    boolean nothing = proposals.files().stream().anyMatch(file -> file.format().isEmpty());
    return nothing ? Exit.WRONG : Exit.DONE;
  }

  private Map<String, Citation> base() throws IOException {
    Map<String, Citation> base = new LinkedHashMap<>();
    if (home.isPresent()) {
      try (Records records = Records.openExisting(database.with(home.get()), Clock.systemUTC())) {
        records.studies().forEach(kept -> base.put(kept.study().id(), kept.study().citation()));
      }
    }
    return base;
  }

  private void keep(List<ReferenceFile> opened, List<SearchDone> log) throws IOException {
    List<ReferenceFile> named =
        opened.stream()
            .map(file -> new ReferenceFile(lastName(Path.of(file.name())), file.bytes()))
            .toList();
    try (Records open =
        Records.openExisting(database.with(home.orElseThrow()), Clock.systemUTC())) {
      Path spool = home.orElseThrow().resolve("references-" + UUID.randomUUID() + ".waiting");
      for (KeptLoad load : FilesKept.keep(open.referenceBase(), named, log, who, spool)) {
        System.err.println(
            load.file().file()
                + ": references new: "
                + load.added()
                + ", changed: "
                + load.changed()
                + ", kept before: "
                + load.known()
                + ".");
      }
    }
  }

  private static String lastName(Path file) {
    return Objects.requireNonNullElse(file.getFileName(), file).toString();
  }

  /** A log names files without their folder. */
  private static List<FileAnswer> named(List<FileAnswer> answers) {
    return answers.stream()
        .map(
            file ->
                new FileAnswer(
                    lastName(Path.of(file.name())),
                    file.format(),
                    file.encoding(),
                    file.read(),
                    file.doubtful(),
                    file.refused(),
                    file.problems()))
        .toList();
  }

  private void write(ReferenceProposals proposals) throws IOException {
    StringWriter table = new StringWriter();
    ProposalsCsv.write(proposals, table);
    if (out.isEmpty()) {
      System.out.print(table);
      System.out.flush();
      return;
    }
    try (Writer target =
        new OutputStreamWriter(OwnerOnly.newFile(out.get()), StandardCharsets.UTF_8)) {
      target.write(table.toString());
    }
  }

  private static void tell(ReferenceProposals proposals) {
    for (FileAnswer file : proposals.files()) {
      System.err.println(
          file.name()
              + ": "
              + file.format().map(format -> format.label() + ", ").orElse("")
              + "records read: "
              + file.read()
              + ", doubtful among them: "
              + file.doubtful()
              + ", refused: "
              + file.refused()
              + ".");
      for (Problem problem : file.problems()) {
        System.err.println(file.name() + ": " + problem.line());
      }
    }
    for (Verdict verdict : Verdict.values()) {
      long count = proposals.pairs().stream().filter(pair -> pair.verdict() == verdict).count();
      System.err.println("Pairs proposed as " + verdict.word() + ": " + count + ".");
    }
  }
}
