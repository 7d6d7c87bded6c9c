package gapwise.server.account;

import io.javalin.security.RouteRole;

/**
 * What a person may do, by what they come for. Every route names the one it asks for where it is
 * added; a route that names none is answered to nobody.
 */
public enum Right implements RouteRole {
  /** Asks nothing: signing in, style and script, whether the server is up. */
  OPEN("anybody"),
  /** To read the evidence, to have it pooled and drawn, and to send plans. */
  SEE("readers, extractors, adjudicators and administrators"),
  /** To bring evidence in: the desk, imports, references, choices of screening. */
  EXTRACT("extractors, adjudicators and administrators"),
  /**
   * To settle what two people see otherwise, what is certain, what is withdrawn, what is agreed.
   */
  SETTLE("adjudicators and administrators"),
  /** To look after one's own account: its password, its tokens, signing out. */
  OWN("everybody who has signed in"),
  /** To look after the accounts of all, and to read the trail. */
  ADMINISTER("administrators");

  private final String who;

  Right(String who) {
    this.who = who;
  }

  /** Who has it, in words. */
  public String who() {
    return who;
  }

  /** Whether a program may use it by a token; accounts are looked after by people alone. */
  public boolean takesToken() {
    return this != OWN && this != ADMINISTER;
  }
}
