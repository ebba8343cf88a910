// What the shell hands to every page. All of it outlives the page.
#pragma once

namespace steelyard {

class Book;
class Clock;
class JobRunner;
class Prompter;
class ReviewStore;

struct UiContext {
    Book& book;
    ReviewStore& reviews;
    Prompter& prompter;
    const Clock& clock;
    JobRunner& jobs;
};

}  // namespace steelyard
