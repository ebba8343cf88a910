# The R side of local_level_benchmark: seconds of KalmanLike, and of the C code behind it called without its R function.
#
# In: level variance, noise variance, start variance; then for each series its evaluations, its length and its values (NA for
# gaps). Out, a line a series: seconds of each, the least of five rounds, and the log likelihood with all its constants.
v <- scan(file("stdin"), quiet = TRUE)
q <- v[1]; h <- v[2]; p <- v[3]; at <- 4
code <- stats:::C_KalmanLike
least <- function(count, work) min(replicate(5, system.time(for (i in seq_len(count)) work())[["user.self"]]))
while (at < length(v)) {
  count <- v[at]; n <- v[at + 1]; y <- v[at + 1 + seq_len(n)]; at <- at + 2 + n
  model <- list(T = matrix(1), Z = 1, h = h, V = matrix(q), a = 0, P = matrix(p), Pn = matrix(p))
  whole <- least(count, function() stats::KalmanLike(y, model, nit = 0L))
  bare <- least(count, function() .Call(code, y, model, 0L, FALSE, FALSE))
  x <- .Call(code, y, model, 0L, FALSE, FALSE); seen <- sum(!is.na(y))
  cat(format(c(whole, bare, -seen / 2 * (log(2 * pi) + x[1] + x[2])), digits = 17), "\n")
}
