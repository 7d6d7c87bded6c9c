package gapwise.server.cli;

import gapwise.problem.WrongInputException;
import gapwise.review.kept.KeptVersion;
import gapwise.review.kept.Moved;
import gapwise.server.home.Records;
import gapwise.server.kept.KeptAnswers;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Lists kept questions with what moved, for checks that a team runs by itself. */
@Command(
    name = "kept",
    description = {
      "List the kept questions, each with its mark: as-it-was, studies-changed, numbers-moved or",
      "no-answer. The exit code is 3 where one is no longer as it was."
    },
    mixinStandardHelpOptions = true)
public final class KeptCommand implements Callable<Integer> {
  @Mixin private ExistingHomeOption home;

  @Override
  public Integer call() {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    boolean stale = false;
    try (Records records = home.records()) {
      KeptAnswers answers = new KeptAnswers(records.evidence(), Version.NUMBER);
      for (KeptVersion version : records.keptQuestions().all()) {
        String mark = mark(answers, version);
        stale |= !mark.equals(Moved.Mark.AS_IT_WAS.code());
        out.println(
            mark
                + "\t"
                + version.question().id()
                + "\t"
                + version.question().title()
                + "\t"
                + version.question().address());
      }
    }
    return stale ? Exit.STALE : Exit.DONE;
  }

  private static String mark(KeptAnswers answers, KeptVersion version) {
    try {
      return answers.moved(version.question()).mark().code();
    } catch (WrongInputException wrong) {
      return "no-answer";
    }
  }
}
