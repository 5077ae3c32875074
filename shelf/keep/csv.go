package keep

import (
	"context"

	"plashet/job"
	"plashet/shelf"
	"plashet/store"
)

// PumpsCSV gives the pumps in use as CSV; unread tells how many cannot be read
// and are left out. Errors as Pumps.
func PumpsCSV(ctx context.Context, s store.Store) (data []byte, unread int, err error) {
	list, unread, _, err := Pumps(ctx, s, "", false, shelf.MostRows)
	if err != nil {
		return nil, 0, err
	}
	jobs := make([]*job.Job, 0, len(list))
	for _, p := range list {
		jobs = append(jobs, p.Job)
	}
	return shelf.PumpsCSV(jobs), unread, nil
}

// PricesCSV gives the prices in use as CSV; none is ever left out. Errors as
// Prices.
func PricesCSV(ctx context.Context, s store.Store) (data []byte, unread int, err error) {
	list, _, err := Prices(ctx, s)
	if err != nil {
		return nil, 0, err
	}
	return shelf.PricesCSV(list), 0, nil
}
