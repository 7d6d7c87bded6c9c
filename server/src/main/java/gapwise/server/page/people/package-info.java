/**
 * The pages of people: signing in, one's own account, the accounts of all, the trail. Start at
 * {@link gapwise.server.page.people.PeoplePages}.
 */
package gapwise.server.page.people;
