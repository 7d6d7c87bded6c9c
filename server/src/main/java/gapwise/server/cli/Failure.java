package gapwise.server.cli;

import gapwise.problem.WrongInputException;
import gapwise.store.StoreUnusableException;
import java.io.IOException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine;
import picocli.CommandLine.ParseResult;

/** Tells people what broke a command off, without a stack trace. */
public final class Failure {
  private static final Logger LOG = LoggerFactory.getLogger(Failure.class);

  private Failure() {}

  /** Words a failure on standard error and gives the exit code. */
  public static int tell(Exception failure, CommandLine command, ParseResult parsed) {
    if (failure instanceof WrongInputException wrong) {
      wrong.problems().forEach(problem -> System.err.println(problem.line()));
      return Exit.WRONG;
    }
    if (failure instanceof StoreUnusableException || failure instanceof IOException) {
      System.err.println(failure.getMessage());
      return Exit.BROKE_OFF;
    }
    if (String.valueOf(failure.getMessage()).contains("Port already in use")) {
      System.err.println("The port is taken by another program; choose one by --port.");
      return Exit.BROKE_OFF;
    }
    LOG.error("{} broke off", command.getCommandName(), failure);
    return Exit.BROKE_OFF;
  }
}
